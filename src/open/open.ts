import { spawn } from 'node:child_process';
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { stat } from 'node:fs/promises';
import { basename, dirname, resolve } from 'node:path';
import { startLocalServer, type LocalServer } from '../shop/server/localServer.js';
import { folderRoute, redirectRoute } from '../shop/server/pageRoutes.js';
import { isJobName, readJobFile } from './jobFolder.js';
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

export interface OpenIo {
  readonly out: (line: string) => void;
  readonly err: (line: string) => void;
  /** The folder with the built page (`dist/page/bench`). */
  readonly pageFolder: string;
  /** Settles when the builder stops the server. */
  readonly stopped: Promise<void>;
  /** Opens a browser at an address; absent for the system's own way. */
  readonly browse?: (link: string) => void;
}

export const OPEN_USAGE = `chamberwright open JOB [--port N] [--no-browser]
  Shows the plan in the browser, to be changed there: from above, the rows on the bench, cross-sections, weights.
  The page is for this machine only. The address holds its key: give it to nobody.`;

/**
 * `chamberwright open JOB`: serves the page of a job until it is stopped.
 *
 * @returns the command's exit code: 0 well, 1 it could not be done, 2 not understood
 */
export async function openCommand(args: readonly string[], io: OpenIo): Promise<number> {
  const asked = understood(args);
  if ('why' in asked) {
    io.err(asked.why);
    io.err(OPEN_USAGE);
    return 2;
  }
  const { job, port, isBrowsed } = asked;
  if (!isJobName(basename(job))) {
    io.err(`${job} is no job file: its name ends in .yaml, .yml or .json.`);
    return 1;
  }
  if (!(await readJobFile(dirname(resolve(job)), basename(job)))) {
    io.err(`There is no job file ${job}. Begin one with: chamberwright new ${job}`);
    return 1;
  }
  if (!(await isThere(io.pageFolder))) {
    io.err(`The page is not built (${basename(io.pageFolder)} is missing). Run: npm run build`);
    return 1;
  }
  let server: BenchServer;
  try {
    server = await startBenchServer({
      job,
      pageFolder: io.pageFolder,
      port,
      failed: (error) => io.err(`Something went wrong in the server: ${String(error)}`),
    });
  } catch (error) {
    io.err(`The page cannot be served: ${(error as Error).message}. Choose another --port.`);
    return 1;
  }
  io.out(`${basename(job)} is on the bench: ${server.link}`);
  io.out('Ctrl+C ends it. What is not saved stays in the open page as long as that is open.');
  if (isBrowsed) (io.browse ?? browse)(server.link);
  await io.stopped;
  await server.close();
  return 0;
}

type Asked = { readonly job: string; readonly port: number; readonly isBrowsed: boolean };

function understood(args: readonly string[]): Asked | { readonly why: string } {
  let port = 0;
  let isBrowsed = true;
  const jobs: string[] = [];
  for (let i = 0; i < args.length; i++) {
    const arg = args[i]!;
    if (arg === '--no-browser') isBrowsed = false;
    else if (arg === '--port') {
      port = Number(args[++i]);
      if (!Number.isInteger(port) || port < 0 || port > 65_535)
        return { why: '--port takes a number from 0 to 65535.' };
    } else if (arg.startsWith('-')) return { why: `${arg} is not known here.` };
    else jobs.push(arg);
  }
  if (jobs.length !== 1) return { why: jobs.length === 0 ? 'Which job?' : 'One job at a time.' };
  return { job: jobs[0]!, port, isBrowsed };
}

/** The system's own way to open an address; where there is none, the printed address does. */
function browse(link: string): void {
  const [command, args] =
    process.platform === 'darwin'
      ? ['open', [link]]
      : process.platform === 'win32'
        ? ['rundll32', ['url.dll,FileProtocolHandler', link]]
        : ['xdg-open', [link]];
  const started = spawn(command as string, args as string[], { stdio: 'ignore', detached: true });
  started.on('error', () => undefined);
  started.unref();
}

function isSame(a: string, b: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(a), digest(b));
}

async function isThere(folder: string): Promise<boolean> {
  try {
    return (await stat(folder)).isDirectory();
  } catch {
    return false;
  }
}
