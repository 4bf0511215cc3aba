import { createHash } from 'node:crypto';
import { lstat, readdir, realpath } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import words from '../../templates/disk.json' with { type: 'json' };
import { replaceFile, writeNew } from '../disk/replace.js';
import { textFile, type Text } from '../disk/textFile.js';
import type { Finding } from '../finding/finding.js';
import type { JobOnDisk, Saved } from './api.js';

/** No file system takes longer ones; letters. */
const LONGEST_NAME = 200;
const JOBS = ['.yaml', '.yml', '.json'];
const TABLES = ['.csv'];

/** The job files of a folder, by name. */
export async function jobsIn(folder: string): Promise<string[]> {
  const names = (await readdir(folder)).filter((name) => isJobName(name)).sort();
  const inside = await Promise.all(names.map((name) => isInside(join(folder, name))));
  return names.filter((_, i) => inside[i]);
}

/** A plain name of a job file in the folder: no path, not hidden. */
export function isJobName(name: string): boolean {
  const isPath = /[/\\:\p{Cc}]/u.test(name) || name.startsWith('.') || name.length > LONGEST_NAME;
  return !isPath && JOBS.includes(extname(name).toLowerCase());
}

/** Reads a job and the tables beside it; or says why not; nothing where there is no such file. */
export async function readJobFile(folder: string, name: string): Promise<JobOnDisk | Finding | undefined> {
  const text = isJobName(name) ? await textOf(join(folder, name)) : undefined;
  if (typeof text !== 'string') return text;
  const tables = (await readdir(folder)).filter(
    (each) => TABLES.includes(extname(each).toLowerCase()) && !each.startsWith('.'),
  );
  const beside = new Map<string, Text>();
  for (const table of tables) {
    const read = await textOf(join(folder, table));
    if (read !== undefined) beside.set(table, read);
  }
  return { name, text, version: versionOf(text), beside: Object.fromEntries(beside) };
}

/**
 * Writes a job file whole or not at all: into a new file beside it, which then takes its place.
 *
 * @param basedOn the version that was changed; absent for a file that must not be there yet. When the file is another
 *   by now, nothing is
 *   written and the file is given back.
 */
export async function writeJobFile(
  folder: string,
  name: string,
  text: string,
  basedOn: string | undefined,
): Promise<Saved> {
  const there = await readJobFile(folder, name);
  if (there && 'remedy' in there) return { saved: false };
  if (there?.version !== basedOn) return { saved: false, ...(there && { theirs: there }) };
  const file = join(folder, name);
  if (!there) return (await writeNew(file, text)) ? { saved: true, version: versionOf(text) } : { saved: false };
  await replaceFile(file, text);
  return { saved: true, version: versionOf(text) };
}

export function versionOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

async function textOf(file: string): Promise<Text | undefined> {
  try {
    await lstat(file);
  } catch {
    return undefined;
  }
  const text = (await isInside(file)) ? textFile(file) : { where: file, ...words.reading.outside };
  // The page is told the name alone.
  return typeof text === 'string' ? text : { ...text, where: basename(file) };
}

/** A file of the folder itself, no link out of it: whoever may ask for the folder's files may not ask for others. */
async function isInside(file: string): Promise<boolean> {
  try {
    const real = await realpath(file);
    return (await lstat(real)).isFile() && dirname(real) === (await realpath(dirname(file)));
  } catch {
    return false;
  }
}
