import { existsSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { openFile } from './store/file/openFile.js';
import type { Opened } from './store/opened.js';
import { isServerAddress } from './store/postgres/address.js';
import { serverProblem } from './store/postgres/serverProblem.js';
import { TRACKER_ENDING, trackerPath } from './store/trackerPath.js';

/**
 * Opens what is recorded of a job: the tracker file beside it, or the board of that name on a PostgreSQL server.
 *
 * @param typed the server's address, where one was asked for
 */
export async function openStore(jobFile: string, typed?: string): Promise<Opened> {
  const tracker = trackerPath(resolve(jobFile));
  if (typed === undefined) return openFile(tracker);
  if (!isServerAddress(typed)) return { ok: false, problem: serverProblem('elsewhere', typed) };
  // Loaded where it is asked for only: most boards never see a server.
  const { openServer } = await import('./store/postgres/openServer.js');
  const opened = await openServer(typed, basename(tracker, TRACKER_ENDING), tracker);
  if (!opened.ok || !existsSync(tracker)) return opened;
  const beside =
    `A tracker file lies beside the job too, and is not used now: ${basename(tracker)}. What it holds comes to the server by ` +
    '"track JOB --store … take" and its name; move it away afterwards.';
  return { ...opened, notices: [...opened.notices, beside] };
}

/** Opens another store to copy from: a tracker file, which must be there, or this job's board on a server. */
export async function openSource(typed: string, jobFile: string): Promise<Opened> {
  if (isServerAddress(typed)) return openStore(jobFile, typed);
  if (!existsSync(typed))
    return {
      ok: false,
      problem: {
        kind: 'elsewhere',
        what: 'There is no such tracker file.',
        where: typed,
        remedy: 'Name the file that ends in .tracker.db, or the address of a server: postgres://USER@HOST/DATABASE.',
      },
    };
  return openFile(typed);
}
