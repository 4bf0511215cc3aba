import { statSync } from 'node:fs';

/** How often the files are looked at, ms. */
const EVERY = 700;

/**
 * A file that is watched, and how it looked when it was read: a change since then is noticed, however long ago that
 * was.
 */
export interface Watched {
  readonly file: string;
  /** When it was written, how large, which one: tells a change without reading it. Nothing where it is not there. */
  readonly look: string | undefined;
}

/** A file as it looks now. To be asked before it is read. */
export function watched(file: string): Watched {
  const found = statSync(file, { throwIfNoEntry: false });
  return { file, look: found && `${found.mtimeMs} ${found.size} ${found.ino}` };
}

/**
 * Calls back whenever one of these files has changed on the disk, one call at a time. Gives what ends it.
 *
 * @param changed reads the files anew and gives those that are to be watched from then on
 */
export function watchFiles(files: readonly Watched[], changed: () => Promise<readonly Watched[]>): () => void {
  let now = files;
  let isBusy = false;
  const look = async () => {
    // A file that is being replaced is gone for a moment.
    const isChanged = now.map(({ file, look: before }) => {
      const { look: after } = watched(file);
      return after !== undefined && after !== before;
    });
    if (isBusy || !isChanged.includes(true)) return;
    isBusy = true;
    now = await changed();
    isBusy = false;
  };
  const timer = setInterval(() => void look(), EVERY).unref();
  return () => clearInterval(timer);
}
