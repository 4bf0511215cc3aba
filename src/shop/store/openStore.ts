import Database from 'libsql';
import { accessSync, constants, copyFileSync, existsSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { networkDriveOf } from './networkDrive.js';
import { problem, problemOf, type Problem } from './problem.js';
import { fileState, migrate } from './schema.js';
import { notYetSalvaged, salvage, setAside } from './setAside.js';
import { ShopStore } from './shopStore.js';
import { isSoundFile } from './soundness.js';

export { trackerPath } from './trackerPath.js';

export type Opened =
  /** `notices` are things the builder must be told: a damaged file put aside, a drive without a write-ahead log. */
  | { readonly ok: true; readonly store: ShopStore; readonly notices: readonly string[] }
  | { readonly ok: false; readonly problem: Problem };

/** How long a write waits for another program that is writing, ms. */
const PATIENCE = 1500;

/**
 * Opens the tracker file, or begins a new one. Whatever is found there is kept: an older file is copied before it is changed, a
 * damaged one is put aside and read as far as it goes, a newer or foreign one is left alone.
 *
 * @param file the path (see {@link trackerPath})
 * @param driveOf tells a network drive by name; for tests
 */
export function openStore(file: string, driveOf: (folder: string) => string | undefined = networkDriveOf): Opened {
  const path = resolve(file);
  const blocked = whyNotWritable(path);
  if (blocked) return { ok: false, problem: blocked };
  const drive = driveOf(dirname(path));
  const notices = drive === undefined ? [] : [networkNotice(drive)];
  try {
    const onNetwork = drive !== undefined;
    if (existsSync(path) && !isSoundFile(path, onNetwork, PATIENCE)) setAside(path, new Date());
    const db = new Database(path, { timeout: PATIENCE });
    // On a network drive one program at a time holds the whole file, and the old journal is used (sqlite.org/wal.html, section 8).
    if (onNetwork) db.exec('PRAGMA locking_mode = EXCLUSIVE');
    const state = fileState(db);
    if (state === 'newer' || state === 'foreign') {
      db.close();
      return { ok: false, problem: problem(state, path) };
    }
    if (state === 'older') notices.push(copyBeforeUpdate(db, path));
    keepSafe(db, onNetwork);
    if (state !== 'current') migrate(db);
    for (const aside of notYetSalvaged(path, db)) notices.push(damagedNotice(aside, salvage(aside, db)));
    const store = new ShopStore(db, path);
    return { ok: true, store, notices: [...notices, ...store.passedOver] };
  } catch (error) {
    return { ok: false, problem: problemOf(error, path) };
  }
}

/** Every write is on the disk when it is acknowledged, and a crash in the middle of one leaves the file as it was before. */
function keepSafe(db: Database.Database, onNetwork: boolean): void {
  const [mode] = db.pragma(`journal_mode = ${onNetwork ? 'DELETE' : 'WAL'}`) as { journal_mode: string }[];
  if (!onNetwork && mode?.journal_mode !== 'wal') db.pragma('journal_mode = DELETE');
  db.exec('PRAGMA synchronous = FULL');
}

function whyNotWritable(path: string): Problem | undefined {
  const folder = dirname(path);
  if (!existsSync(folder) || !statSync(folder).isDirectory()) return problem('no-folder', folder);
  try {
    accessSync(folder, constants.W_OK);
    if (existsSync(path)) accessSync(path, constants.R_OK | constants.W_OK);
    return undefined;
  } catch (error) {
    return problem('read-only', path, (error as NodeJS.ErrnoException).code);
  }
}

function copyBeforeUpdate(db: Database.Database, path: string): string {
  db.pragma('wal_checkpoint(TRUNCATE)');
  const { user_version: version } = db.prepare('PRAGMA user_version').get([]) as { user_version: number };
  let copy = `${path}.version-${version}`;
  for (let again = 2; existsSync(copy); again++) copy = `${path}.version-${version}-${again}`;
  copyFileSync(path, copy);
  return `The tracker file was brought up to date. As it was before: ${copy}`;
}

function damagedNotice(aside: string, saved: number): string {
  return (
    `The tracker file was damaged. It was put aside as ${aside} and a new one begun; ` +
    `${saved} ${saved === 1 ? 'entry' : 'entries'} could be read from it and taken over. ` +
    'Compare the list with the blocks on the bench before you go on.'
  );
}

function networkNotice(drive: string): string {
  return (
    `The job lies on a network drive (${drive}). The tracker keeps its file there with the slower, safer journal and lets only one ` +
    'program use it at a time. A folder on this machine is the better place.'
  );
}
