import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { lstat, readFile, rm } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { z } from 'zod';
import { replaceFile } from './replace.js';

/**
 * The list of what we wrote into a folder, kept in that folder: by it a file of ours is told from the builder's own, or
 * from one edited since.
 */
export const LIST = '.chamberwright.json';

const SAID =
  'What chamberwright wrote here, so that it never writes over a file of yours. Leave this file where it is.';

/** No path out of the folder, however the list came there. */
const plainName = z.string().refine((name) => name === basename(name) && !/[/\\]|^\.{0,2}$/.test(name));

const writtenSchema = z.object({
  /** The name of a file in this folder. */
  name: plainName,
  /** Of its bytes as they were written. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** The command that wrote it. */
  by: z.string(),
  /** The board it is of, and the state its job was in: another where anything in the job was changed. */
  job: z.string(),
  state: z.string(),
});
const listSchema = z.object({ chamberwright: z.literal(1), said: z.string(), files: z.array(writtenSchema) });

/** One file as we wrote it. While files are put in place, a name may stand here twice: as it was, and as it will be. */
export type WrittenFile = z.infer<typeof writtenSchema>;

/**
 * What we wrote into a folder; nothing where there is no list; undefined where there is something of that name that is
 * no list of ours.
 */
export async function writtenIn(folder: string): Promise<readonly WrittenFile[] | undefined> {
  const file = join(folder, LIST);
  try {
    if (!(await lstat(file)).isFile()) return undefined;
    const read = listSchema.safeParse(JSON.parse(await readFile(file, 'utf8')));
    return read.success ? read.data.files : undefined;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? [] : undefined;
  }
}

/** Writes the list anew, whole or not at all; takes it away where nothing of ours is left. */
export async function writeList(folder: string, files: readonly WrittenFile[], aside: string): Promise<void> {
  const file = join(folder, LIST);
  if (files.length === 0) return rm(file, { force: true });
  const text = JSON.stringify({ chamberwright: 1, said: SAID, files }, null, 1) + '\n';
  return replaceFile(file, text, join(aside, LIST));
}

/** The hash of a plain file's bytes; undefined where there is no such file, or a link, a folder, a pipe. */
export async function hashOf(file: string): Promise<string | undefined> {
  const there = await lstat(file).catch(() => undefined);
  if (!there?.isFile()) return undefined;
  const hash = createHash('sha256');
  for await (const part of createReadStream(file)) hash.update(part as Buffer);
  return hash.digest('hex');
}
