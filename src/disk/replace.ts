import { lstat, open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/**
 * Writes a text file whole or not at all: into a new file, which is on the disk before it takes the other's place, with
 * its rights.
 *
 * @param fresh where the new file is made; beside the other where nothing is said, and on its disk in any case
 */
export async function replaceFile(
  file: string,
  text: string,
  fresh = join(dirname(file), `.${basename(file)}.${process.pid}.new`),
): Promise<void> {
  const there = await lstat(file).catch(() => undefined);
  try {
    await rm(fresh, { force: true });
    await writeNew(fresh, text, there && there.mode & 0o777);
    await rename(fresh, file);
  } catch (error) {
    await rm(fresh, { force: true });
    throw error;
  }
}

/** Writes a file that is not there yet; gives false where anything has that name, be it a link that leads nowhere. */
export async function writeNew(file: string, text: string, mode = 0o644): Promise<boolean> {
  let handle;
  try {
    handle = await open(file, 'wx', mode);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
  try {
    await handle.writeFile(text, 'utf8');
    await handle.sync();
  } finally {
    await handle.close();
  }
  return true;
}
