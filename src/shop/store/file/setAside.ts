import { existsSync, readdirSync, renameSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type Database from 'libsql';
import { sizeOf } from './firstLook.js';
import { readSetting } from './setting.js';

/** SQLite keeps what it is writing, and earlier versions what they wrote last, in further files beside the first. */
export const COMPANIONS = ['-wal', '-shm', '-journal'] as const;

/** A free name beside the tracker file, with the time in it: `….damaged-20260314-091500`. */
export function nameBeside(path: string, word: 'damaged' | 'rescued', now: Date): string {
  const stamp = now.toISOString().replace(/[-:]/g, '').replace('T', '-').slice(0, 15);
  let name = `${path}.${word}-${stamp}`;
  for (let again = 2; existsSync(name); again++) name = `${path}.${word}-${stamp}-${again}`;
  return name;
}

/**
 * Renames a damaged tracker file, with its companions, so that nothing writes to it any more.
 *
 * @returns the new path
 */
export function setAside(path: string, now: Date): string {
  const aside = nameBeside(path, 'damaged', now);
  for (const companion of ['', ...COMPANIONS]) {
    if (sizeOf(path + companion) > 0) renameSync(path + companion, aside + companion);
  }
  return aside;
}

/** The files that were once put aside or rescued here and whose rows have not been taken over yet, the newest first. */
export function notYetTakenOver(path: string, db: Database.Database): readonly string[] {
  const starts = [`${basename(path)}.damaged-`, `${basename(path)}.rescued-`];
  return readdirSync(dirname(path))
    .filter((name) => starts.some((start) => name.startsWith(start)) && !COMPANIONS.some((end) => name.endsWith(end)))
    .filter((name) => !name.endsWith('.reading') && readSetting(db, takenOverMark(name)) === undefined)
    .sort()
    .reverse()
    .map((name) => join(dirname(path), name));
}

/** The setting that says that a file beside the tracker was taken over. */
export function takenOverMark(name: string): string {
  return `salvaged ${basename(name)}`;
}
