import { constants } from 'node:fs';
import { access, mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { readFileSync } from 'node:fs';
import { readJob } from '../job/read.js';
import { printFinding } from '../job/finding.js';
import type { Job } from '../job/job.js';
import type { Io } from './io.js';

/** A job file larger than this, bytes, is no job file and is not even read. */
const MOST_BYTES = 64 * 1024 * 1024;

/** Reads a job and says what is wrong with it; nothing where it cannot be planned. */
export async function jobFrom(file: string, io: Io): Promise<Job | undefined> {
  let text: string;
  try {
    const { size } = await stat(file);
    if (size > MOST_BYTES) {
      io.err(`${file}: ${Math.round(size / 1e6)} MB is too large for a job file → name the job file, usually .yaml`);
      return undefined;
    }
    text = await readFile(file, 'utf8');
  } catch (error) {
    io.err(`${file}: ${reason(error)} → name a job file, or begin one with: chamberwright new ${file}`);
    return undefined;
  }
  const { job, findings } = readJob(text, file, (name) => textBeside(file, name));
  for (const finding of findings) io.err(printFinding(finding));
  if (!job)
    io.err(
      `${findings.length} ${findings.length === 1 ? 'thing' : 'things'} to put right in ${basename(file)}; nothing was written.`,
    );
  return job;
}

function textBeside(file: string, name: string): string | undefined {
  try {
    return readFileSync(resolve(dirname(file), name), 'utf8');
  } catch {
    return undefined;
  }
}

/** Makes a folder and makes sure that it can be written to; says so, before any work, where it cannot. */
export async function folderReady(folder: string, io: Io): Promise<boolean> {
  try {
    await mkdir(folder, { recursive: true });
    await access(folder, constants.W_OK | constants.X_OK);
    return true;
  } catch (error) {
    io.err(`${folder}: ${reason(error)} → choose a folder that can be written to`);
    return false;
  }
}

/**
 * Writes a file whole or not at all: into a new file beside it, which then takes its place.
 *
 * @param fill writes the contents to the path it is given
 */
export async function writeWhole(file: string, fill: (path: string) => Promise<void>): Promise<void> {
  const fresh = join(dirname(file), `.${basename(file)}.${process.pid}.new`);
  try {
    await fill(fresh);
    const handle = await open(fresh, 'r+');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(fresh, file);
  } catch (error) {
    await rm(fresh, { force: true });
    throw error;
  }
}

/** What went wrong with a file, in words. */
export function reason(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  switch (code) {
    case 'ENOENT':
      return 'there is no such file or folder';
    case 'EACCES':
    case 'EPERM':
      return 'it may not be read or written';
    case 'EROFS':
      return 'the disk can only be read';
    case 'EISDIR':
      return 'this is a folder';
    case 'ENOTDIR':
    case 'EEXIST':
      return 'a file stands where a folder must be';
    case 'ENOSPC':
      return 'the disk is full';
    default:
      return message;
  }
}
