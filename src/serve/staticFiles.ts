import { readFile, realpath, stat } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

export interface StaticFile {
  readonly type: string;
  readonly bytes: Uint8Array;
  /** Built files carry a fingerprint of their contents in their name and never change. */
  readonly lasting: boolean;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.yaml': 'text/plain; charset=utf-8',
  '.yml': 'text/plain; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.pdf': 'application/pdf',
  '.dxf': 'application/dxf',
  '.stl': 'model/stl',
};

/**
 * A file inside a folder, or nothing: no path leads out of it, neither by `..` in any spelling nor by a link, hidden
 * files and unknown kinds are not served.
 *
 * @param folder the folder that is served
 * @param path what follows the folder's address, still percent-encoded, without a leading slash
 */
export async function staticFile(folder: string, path: string): Promise<StaticFile | undefined> {
  const names = namesIn(path);
  if (!names) return undefined;
  try {
    const root = await realpath(folder);
    let file = await realpath(join(root, ...names));
    if (file !== root && !file.startsWith(root + sep)) return undefined;
    if ((await stat(file)).isDirectory()) {
      file = await realpath(join(file, 'index.html'));
      if (!file.startsWith(root + sep)) return undefined;
    }
    const type = TYPES[extname(file).toLowerCase()];
    if (type === undefined || !(await stat(file)).isFile()) return undefined;
    return { type, bytes: await readFile(file), lasting: /-[\w-]{8,}\.(js|css|woff2|wasm)$/.test(file) };
  } catch {
    return undefined;
  }
}

function namesIn(path: string): readonly string[] | undefined {
  let decoded: string;
  try {
    decoded = decodeURIComponent(path);
  } catch {
    return undefined;
  }
  const names = decoded.split('/').filter((name, i, all) => name !== '' || i < all.length - 1);
  // eslint-disable-next-line no-control-regex -- a NUL ends a path for the system, a backslash parts it on Windows, a colon names a stream there
  const odd = /[\u0000-\u001f\\:%]/;
  return names.some((name) => name === '' || name.startsWith('.') || odd.test(name)) ? undefined : names;
}
