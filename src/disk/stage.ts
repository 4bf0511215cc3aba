import { mkdirSync, rmSync } from 'node:fs';
import { readdir, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * Where files are made before they take their places: a folder of its own within theirs, so that a rename is enough.
 */
export interface Staging {
  readonly folder: string;
  /** Where to make the file that will be called `name`. */
  readonly place: (name: string) => string;
  /** Makes that file. */
  readonly put: (name: string, contents: string | Uint8Array) => Promise<void>;
  /** All that were made, in their order, and the latest: the one that a full disk stops. */
  readonly names: () => readonly string[];
  readonly latest: () => string | undefined;
  /** While files take their places, Ctrl+C waits; the function given back lets it through. */
  readonly hold: () => () => void;
  readonly clear: () => Promise<void>;
}

const NAME = /^\.chamberwright-(\d+)\.new$/;
/** A stage older than this is left over, whoever has its number now, ms. */
const OLD = 60 * 60 * 1000;
const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * Begins a stage in a folder, and clears away what a program that was killed has left there; unless another program is
 * at work there.
 */
export async function beginStage(folder: string): Promise<Staging | { readonly busy: string }> {
  const own = join(folder, `.chamberwright-${process.pid}.new`);
  let isHeld = false;
  let waiting: NodeJS.Signals | undefined;
  const stop = (signal: NodeJS.Signals): void => {
    if (isHeld) {
      waiting = signal;
      return;
    }
    rmSync(own, { recursive: true, force: true });
    leave();
    // Now that nobody listens any more, it ends the program as it always would.
    process.kill(process.pid, signal);
  };
  const leave = (): void => SIGNALS.forEach((signal) => process.off(signal, stop));
  // From before there is anything to clear away.
  SIGNALS.forEach((signal) => process.on(signal, stop));
  rmSync(own, { recursive: true, force: true });
  // Made before looking for others: of two that begin together, each sees the other. At once, so that no signal comes
  // in between.
  try {
    mkdirSync(own);
  } catch (error) {
    leave();
    throw error;
  }
  for (const name of await readdir(folder)) {
    const [, pid] = NAME.exec(name) ?? [];
    if (pid === undefined || Number(pid) === process.pid) continue;
    if (await isAtWork(join(folder, name), Number(pid))) {
      leave();
      await rm(own, { recursive: true, force: true });
      return { busy: name };
    }
    await rm(join(folder, name), { recursive: true, force: true });
  }
  const names: string[] = [];
  const place = (name: string): string => {
    if (!names.includes(name)) names.push(name);
    return join(own, name);
  };
  return {
    folder: own,
    place,
    put: (name, contents) => writeFile(place(name), contents),
    names: () => names,
    latest: () => names.at(-1),
    hold: () => {
      isHeld = true;
      return () => {
        isHeld = false;
        if (waiting) stop(waiting);
      };
    },
    clear: async () => {
      leave();
      await rm(own, { recursive: true, force: true });
    },
  };
}

async function isAtWork(stage: string, pid: number): Promise<boolean> {
  const begun = await stat(stage).catch(() => undefined);
  if (!begun || Date.now() - begun.mtimeMs > OLD) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
