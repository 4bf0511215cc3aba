import { execFileSync } from 'node:child_process';
import { copyFileSync, linkSync, mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A folder with a job, its table of offsets and, once something was tracked, its tracker. */
export function boardFolder(): { folder: string; job: string; table: string; tracker: string } {
  const folder = mkdtempSync(join(tmpdir(), 'cw-'));
  for (const name of ['fell-short.yaml', 'fell-short.csv']) copyFileSync(join('samples', name), join(folder, name));
  const [job, table, tracker] = ['fell-short.yaml', 'fell-short.csv', 'fell-short.tracker.db'].map((name) =>
    join(folder, name),
  ) as [string, string, string];
  return { folder, job, table, tracker };
}

/** What may stand where a file is to be written, and must stay as it is: made at `path`, in the folder of the board. */
export const IN_THE_WAY: readonly (readonly [what: string, make: (path: string, job: string) => void])[] = [
  ['a file of the builder’s', (path) => writeFileSync(path, 'mine\n')],
  ['an empty file', (path) => writeFileSync(path, '')],
  ['the job by another name (hard link)', (path, job) => linkSync(job, path)],
  ['the job by another name (symbolic link)', (path, job) => symlinkSync(job, path)],
  ['a link that leads nowhere', (path) => symlinkSync(join(path, '..', 'nowhere'), path)],
  ['a folder', (path) => mkdirSync(path)],
  ['a pipe', (path) => execFileSync('mkfifo', [path])],
];
