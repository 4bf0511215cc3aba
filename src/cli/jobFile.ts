import { existsSync, realpathSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import words from '../../templates/command.json' with { type: 'json' };
import { meshFile, textFile, type Text } from '../disk/textFile.js';
import { sayFinding } from '../finding/say.js';
import { sayJobFinding } from '../job/finding.js';
import type { Job } from '../job/job.js';
import { readJob, type ReadJob } from '../job/whole/read.js';
import { trackerPath } from '../shop/store/trackerPath.js';
import type { Io } from './io.js';
import { say } from '../words/say.js';
import { watched, type Watched } from './watchFiles.js';

/** A job as it was read, and the files that make it up. */
export interface JobRead {
  readonly job: Job;
  /** The job file itself, also where a link was named: its table and its tracker lie beside it. */
  readonly file: string;
  /** All that was read or is kept for this job: the job file, its table, its tracker. */
  readonly inputs: readonly string[];
  /** What the job file says. */
  readonly text: string;
  /** Reads another text of the same job, with the same files beside it. */
  readonly reread: (text: string) => ReadJob;
}

/**
 * Reads a job and says what is wrong with it; nothing where it cannot be planned.
 *
 * @param looked takes in each file that was looked for, whether or not it could be read, as it was just before
 */
export function jobFrom(named: string, io: Io, looked: Watched[] = []): JobRead | undefined {
  looked.push(watched(named));
  const text = jobText(named);
  if (typeof text !== 'string') {
    io.err(sayFinding(text));
    return undefined;
  }
  const file = realpathSync(named);
  const tables: string[] = [];
  const beside =
    <T>(read: (path: string) => T) =>
    (name: string): T | undefined => {
      const table = resolve(dirname(file), name);
      tables.push(table);
      looked.push(watched(table));
      return existsSync(table) ? read(table) : undefined;
    };
  const reread = (another: string) => readJob(another, named, beside(textFile), undefined, beside(meshFile));
  const { job, findings } = reread(text);
  for (const finding of findings) io.err(sayJobFinding(finding));
  if (job) return { job, file, inputs: [file, ...tables, trackerPath(file)], text, reread };
  const things = findings.length === 1 ? 'thing' : 'things';
  io.err(`${findings.length} ${things} to put right in ${basename(named)}; nothing was written.`);
  return undefined;
}

/** The text of a job file; or why it cannot be had, and how one is begun. */
export function jobText(named: string): Text {
  const text = textFile(named);
  return typeof text === 'string' ? text : { ...text, remedy: say(words.job.begin, { file: named }) };
}
