import { unwatchFile, watchFile } from 'node:fs';

/** How often the files are looked at, ms. */
const EVERY = 700;

/** Calls back whenever one of these files has changed on the disk, one call at a time. Gives what ends it. */
export function watchFiles(files: readonly string[], changed: () => Promise<void>): () => void {
  let last = Promise.resolve();
  const look = (now: { mtimeMs: number; size: number }, before: { mtimeMs: number; size: number }) => {
    // A file that is being replaced is gone for a moment.
    if (now.mtimeMs === 0 || (now.mtimeMs === before.mtimeMs && now.size === before.size)) return;
    last = last.then(changed);
  };
  for (const file of files) watchFile(file, { interval: EVERY, persistent: false }, look);
  return () => {
    for (const file of files) unwatchFile(file, look);
  };
}
