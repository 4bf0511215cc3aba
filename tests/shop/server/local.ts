import { request as httpRequest, type IncomingHttpHeaders } from 'node:http';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { startShopServer, type ShopServer, type ShopServerOptions } from '../../../src/shop/server/shopServer.js';
import { rescueBlocks } from '../rescueBoard.js';
import { opened, scratchFolder } from '../store/scratch.js';

/**
 * Another address of this machine, to stand for its address in the network: all of 127/8 is loopback (RFC 1122,
 * 3.2.1.3).
 */
export const SHARED_AT = '127.0.0.2';

/** A tracker's server within the test, on a free port. */
export async function started(part: Partial<ShopServerOptions> = {}, tracker?: string) {
  const folder = scratchFolder();
  const store = part.store ?? (await opened(tracker ?? join(folder, 'a.tracker.db')));
  const failures: unknown[] = [];
  const server = await startShopServer({
    store,
    job: 'Rescue board 12',
    units: 'mm',
    blocks: rescueBlocks(),
    pageFolder: folder,
    port: 0,
    failed: (error) => failures.push(error),
    ...part,
  });
  if ('problem' in server) throw new Error(server.problem.what);
  afterAll(async () => {
    await server.close();
    await store.close();
  });
  return {
    store,
    server,
    folder,
    failures,
    token: tokenOf(server),
    code: () => server.phoneLink()!.split('#code=')[1]!,
  };
}

export function tokenOf({ ownerLink }: ShopServer): string {
  return ownerLink.split('#token=')[1]!;
}

export interface Asked {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Record<string, string | string[]>;
  readonly body?: string | Buffer;
  /** The address to connect to. */
  readonly at?: string;
  readonly setHost?: boolean;
}

export interface Answered {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

/** Sends exactly these headers and this path: no browser's and no library's corrections. */
export function ask(
  port: number,
  { method = 'GET', path, headers = {}, body, at = '127.0.0.1', setHost = true }: Asked,
): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const request = httpRequest({ host: at, port, method, path, headers, setHost, agent: false }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('error', reject);
      response.on('end', () =>
        resolve({ status: response.statusCode!, headers: response.headers, text: Buffer.concat(parts).toString() }),
      );
    });
    request.on('error', (error) => {
      // A refused body may still be on its way when the server hangs up; the answer has come by then.
      if ((error as NodeJS.ErrnoException).code !== 'EPIPE') reject(error);
    });
    request.end(body);
  });
}

/** The headers of a good request of the page. */
export function pageHeaders(port: number, token: string, at = '127.0.0.1'): Record<string, string> {
  return { Authorization: `Bearer ${token}`, Origin: `http://${at}:${port}`, 'Content-Type': 'application/json' };
}
