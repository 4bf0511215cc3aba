import words from '../../templates/serve.json' with { type: 'json' };
import { refuse, send } from './answer.js';
import { EVERYBODY, type Role, type Route } from './route.js';
import { staticFile } from './staticFiles.js';

/**
 * Serves the files of one folder, and nothing outside it. A page's own files hold no secrets and are open to everybody
 * who may connect; the opened folder is for the owner.
 *
 * @param at where they appear, with a slash at both ends: `/shop/`
 * @param folder the folder on disk
 */
export function folderRoute(at: string, folder: string, allowed: readonly Role[] = EVERYBODY): Route {
  return {
    method: 'GET',
    path: `${at}*`,
    allowed,
    answer: async ({ rest }, response) => {
      const file = await staticFile(folder, rest);
      if (!file) return refuse(response, 404, words.nothing);
      send(response, 200, file.type, file.bytes, {
        'Cache-Control': file.lasting ? 'private, max-age=31536000, immutable' : 'no-cache',
      });
    },
  };
}

/**
 * Sends whoever comes to this address on to another: to the page from the bare one, or from one without its last slash.
 */
export function redirectRoute(path: string, to: string): Route {
  return {
    method: 'GET',
    path,
    allowed: EVERYBODY,
    answer: (_, response) => send(response, 302, 'text/plain', new Uint8Array(), { Location: to }),
  };
}
