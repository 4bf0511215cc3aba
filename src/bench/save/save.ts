import type { Bench } from '../state/bench.js';
import { changed } from '../edit/history.js';
import type { JobOnDisk, Jobs } from './jobs.js';

/** Writes the job back to its file. Where the file has changed meanwhile, asks instead. */
export async function save(bench: Bench, jobs: Jobs): Promise<void> {
  await guarded(bench, async () => {
    const { file, history } = bench.now;
    const saved = await jobs.save(file.name, history.text, file.version);
    if (saved.saved) return isSaved(bench, { ...file, text: history.text, version: saved.version });
    if (saved.theirs) bench.show({ conflict: saved.theirs, said: `${file.name} has been changed on disk.` });
    else {
      // The file is gone: writing it anew loses nothing.
      const again = await jobs.save(file.name, history.text, undefined);
      if (again.saved) isSaved(bench, { ...file, text: history.text, version: again.version });
    }
  });
}

/** Writes what is on the bench over the file as it is now; that one stays one step back. */
export async function saveOver(bench: Bench, jobs: Jobs, theirs: JobOnDisk): Promise<void> {
  await guarded(bench, async () => {
    const { history } = bench.now;
    const saved = await jobs.save(theirs.name, history.text, theirs.version);
    if (!saved.saved) {
      if (saved.theirs) bench.show({ conflict: saved.theirs, said: 'The file has been changed again.' });
      return;
    }
    const kept = changed(changed(history, theirs.text), history.text);
    bench.show({ history: kept });
    isSaved(bench, { ...theirs, text: history.text, version: saved.version });
  });
}

/** Writes what is on the bench into a new file and goes on with that one. */
export async function saveAs(bench: Bench, jobs: Jobs, name: string): Promise<void> {
  await guarded(bench, async () => {
    const { file, history } = bench.now;
    const saved = await jobs.save(name, history.text, undefined);
    if (!saved.saved) return bench.show({ said: `There is a file ${name} already; choose another name.` });
    isSaved(bench, { name, text: history.text, version: saved.version, beside: file.beside });
  });
}

function isSaved(bench: Bench, file: JobOnDisk): void {
  bench.show({ file, saved: file.text, conflict: undefined, said: `Saved as ${file.name}.` });
}

async function guarded(bench: Bench, action: () => Promise<void>): Promise<void> {
  try {
    await action();
  } catch (error) {
    bench.show({ said: `Not saved. ${(error as Error).message}` });
  }
}
