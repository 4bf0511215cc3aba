import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { basename, dirname, resolve } from 'node:path';
import { startLocalServer, type LocalServer } from '../serve/localServer.js';
import { folderRoute, redirectRoute } from '../serve/pageRoutes.js';
import { paperRoutes } from './paperRoutes.js';
import { jobRoutes } from './routes.js';

export interface BenchServer {
  /** The builder's own way in, with his token. To be shown to nobody else. */
  readonly link: string;
  readonly port: number;
  readonly close: () => Promise<void>;
}

export interface BenchServerOptions {
  /** The job file's path. */
  readonly job: string;
  /** The folder with the built page (`dist/page/bench`). */
  readonly pageFolder: string;
  /** 0 for any free one. */
  readonly port: number;
  readonly failed: (error: unknown) => void;
}

/**
 * Serves the page of one job on this machine, and nothing but the job's own folder.
 *
 * @throws the system's error where the port is taken
 */
export async function startBenchServer({ job, pageFolder, port, failed }: BenchServerOptions): Promise<BenchServer> {
  const token = randomBytes(32).toString('base64url');
  const file = resolve(job);
  const server: LocalServer = await startLocalServer({
    routes: [
      ...jobRoutes(dirname(file), basename(file)),
      ...paperRoutes(dirname(file)),
      folderRoute('/bench/', pageFolder),
      redirectRoute('/', '/bench/'),
      redirectRoute('/bench', '/bench/'),
    ],
    addresses: ['127.0.0.1'],
    port,
    roleOf: (given) => (isSame(given, token) ? 'owner' : 'nobody'),
    failed,
  });
  return {
    link: `http://127.0.0.1:${server.port}/bench/#token=${token}`,
    port: server.port,
    close: () => server.close(),
  };
}

function isSame(a: string, b: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(a), digest(b));
}
