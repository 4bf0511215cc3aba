import QRCode from 'qrcode';
import words from '../../templates/command.json' with { type: 'json' };
import { lanAddresses } from '../serve/lanAddress.js';
import { CODE_LASTS } from './server/oneTimeCode.js';
import type { Route } from '../serve/route.js';
import { startShopServer, type ShopServer } from './server/shopServer.js';
import type { Finding } from '../finding/finding.js';
import { sayFinding, sayInLines } from '../finding/say.js';
import { say } from '../words/say.js';
import type { Problem } from './store/problem.js';
import type { ShopStore } from './store/shopStore.js';
import type { TrackedBlock } from './log/trackedBlock.js';

/** What the page's server shows, and whom it talks to. */
export interface ServeIo {
  readonly job: string;
  readonly units: 'mm' | 'in';
  readonly blocks: readonly TrackedBlock[];
  /** The folder with the built page (`dist/page/shop`). */
  readonly pageFolder: string;
  readonly out: (line: string) => void;
  readonly err: (line: string) => void;
  /** Whether a person reads what is printed. Codes are never written into a file. */
  readonly isTerminal: boolean;
  /** Settles when the builder stops the server. */
  readonly stopped: Promise<void>;
  /** More to serve beside the tracker. */
  readonly routes?: readonly Route[];
  /** Called once it runs, so that a changed plan can be put in force. */
  readonly running?: (server: ShopServer) => void;
}

export interface ServeOptions extends ServeIo {
  /** The address to let phones in at, or `true` for this machine's only one. */
  readonly share?: string | true;
  readonly port?: number;
}

/** What sharing protects and what it does not, in plain words. */
export const SHARE_WORDS = `Phones in the same network can be let in. Each code below lets in one phone, within ${CODE_LASTS} minutes; then there is another.
Without a code nobody reads or writes. What this does not do: nothing is encrypted on the way, so somebody who
can listen in on this network could read along and act in a phone's name. Use your own network, not a guest or
public one. "track JOB forget-phones" shuts every phone out again.`;

/**
 * Serves the tracker's page until it is stopped.
 *
 * @returns the command's exit code
 */
export async function serveShop(store: ShopStore, options: ServeOptions): Promise<number> {
  const { out, err, isTerminal } = options;
  const share = shareAddress(options.share, lanAddresses());
  if (typeof share === 'object') {
    err(sayFinding(share));
    return 2;
  }
  let server: ShopServer | { readonly problem: Problem };
  try {
    server = await startShopServer({
      store,
      job: options.job,
      units: options.units,
      blocks: options.blocks,
      pageFolder: options.pageFolder,
      ...(share === undefined ? {} : { share }),
      ...(options.port === undefined ? {} : { port: options.port }),
      ...(options.routes === undefined ? {} : { routes: options.routes }),
      codeChanged: (link) => void showCode(link, options),
      failed: (error) => err(`Something went wrong in the tracker: ${String(error)}`),
    });
  } catch (error) {
    err(
      `The page cannot be served: ${(error as Error).message}. Choose another --port, or another address after --share.`,
    );
    return 2;
  }
  if ('problem' in server) {
    err(sayInLines(server.problem));
    return 2;
  }
  server.notices.forEach(err);
  if (isTerminal) out(`On this machine: ${server.ownerLink}`);
  else out(`The page is at ${server.ownerLink.split('#')[0]}. Its key is shown only in a terminal.`);
  const link = server.phoneLink();
  if (link !== undefined) {
    out(SHARE_WORDS);
    await showCode(link, options);
  }
  options.running?.(server);
  await options.stopped;
  await server.close();
  return 0;
}

async function showCode(link: string, { out, isTerminal }: ServeOptions): Promise<void> {
  if (!isTerminal) return out('The code is shown only in a terminal, and on this machine’s own page under “Phones”.');
  const [address, code] = link.split('#code=');
  out(await QRCode.toString(link, { type: 'terminal', small: true }));
  out(`For the next phone: scan this, or open ${address} and type ${code}`);
}

/** Which address to share at: the one named, if it is ours; the only one; or nothing where it is not asked for. */
export function shareAddress(asked: string | true | undefined, ours: readonly string[]): string | undefined | Finding {
  if (asked === undefined) return undefined;
  if (asked === true && ours.length === 1) return ours[0];
  if (asked !== true && ours.includes(asked)) return asked;
  const { address, noNetwork, networks, noAddress } = words.track;
  const where = asked === true ? '--share' : asked;
  if (asked === true && ours.length === 0) return { where, ...noNetwork };
  const { what, remedy } = asked === true ? networks : address;
  return { where, what, remedy: say(remedy, { ours: ours.join(', ') || noAddress }) };
}
