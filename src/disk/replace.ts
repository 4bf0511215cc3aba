import { closeSync, fsyncSync, openSync, renameSync } from 'node:fs';
import { link, lstat, open, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/**
 * Writes a text file whole or not at all: into a new file, which is on the disk before it takes the other's place, with
 * its rights.
 *
 * @param fresh where the new file is made; beside the other where nothing is said, and on its disk in any case
 */
export async function replaceFile(file: string, text: string, fresh = freshBeside(file)): Promise<void> {
  const there = await lstat(file).catch(() => undefined);
  try {
    await rm(fresh, { force: true });
    await writeFile(fresh, text, { flag: 'wx', mode: there && there.mode & 0o777 });
    takePlace(fresh, file);
  } catch (error) {
    await rm(fresh, { force: true });
    throw error;
  }
}

/**
 * Writes a file that is not there yet, whole or not at all; gives false where anything has that name, be it a link that
 * leads nowhere.
 */
export async function writeNew(file: string, text: string): Promise<boolean> {
  const fresh = freshBeside(file);
  try {
    await rm(fresh, { force: true });
    await writeFile(fresh, text, { flag: 'wx', mode: 0o644 });
    onDisk(fresh);
    await link(fresh, file).catch(async (error: NodeJS.ErrnoException) => {
      if (error.code === 'EEXIST') throw error;
      // A disk without links, as many a stick: the name is taken first, so that nothing else can have it.
      await (await open(file, 'wx')).close();
      takePlace(fresh, file);
    });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  } finally {
    await rm(fresh, { force: true });
  }
}

/** Puts a file that was written whole in the place of another: it is on the disk before it has that name. */
export function takePlace(fresh: string, file: string): void {
  onDisk(fresh);
  renameSync(fresh, file);
}

/** Makes sure that a file is on the disk for good: a loss of power takes nothing of it any more. */
export function onDisk(file: string): void {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

const freshBeside = (file: string): string => join(dirname(file), `.${basename(file)}.${process.pid}.new`);
