import words from '../../templates/tracker.json' with { type: 'json' };
import { existsSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { openFile } from './store/file/openFile.js';
import { problemAt } from './store/problem.js';
import { say } from '../words/say.js';
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
  return { ...opened, notices: [...opened.notices, say(words.beside, { file: basename(tracker) })] };
}

/** Opens another store to copy from: a tracker file, which must be there, or this job's board on a server. */
export async function openSource(typed: string, jobFile: string): Promise<Opened> {
  if (isServerAddress(typed)) return openStore(jobFile, typed);
  if (!existsSync(typed))
    return {
      ok: false,
      problem: problemAt('elsewhere', words.source, typed),
    };
  return openFile(typed);
}
