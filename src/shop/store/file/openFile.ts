import Database from 'libsql';
import type { TakenOver } from '../content.js';
import {
  accessSync,
  chmodSync,
  closeSync,
  constants,
  copyFileSync,
  existsSync,
  openSync,
  readdirSync,
  statSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { FileStore } from './fileStore.js';
import { firstLook, sizeOf, type FileState } from './firstLook.js';
import { networkDriveOf } from './networkDrive.js';
import { readPages } from './pages.js';
import { TRACKER_ENDING } from '../trackerPath.js';
import type { Opened } from '../opened.js';
import type { Problem } from '../problem.js';
import { problem, problemOf } from './fileProblem.js';
import { recovered } from './recovered.js';
import { OWNER_ONLY } from './rescue.js';
import { migrate, MIGRATIONS } from './schema.js';
import { notYetTakenOver, setAside, takenOverMark } from './setAside.js';
import { writeSetting } from './setting.js';
import { isSoundFile } from './soundness.js';
import { takeOver } from './takeOver.js';

/** How long a write waits for another program that is writing, ms. */
const PATIENCE = 1500;
/** How often a file that seems damaged is looked at, and the time between, ms. */
const LOOKS = 3;
const BETWEEN_LOOKS = 50;
/** So many stretches of lost entries are named. */
const MOST_RUNS = 20;

/**
 * Opens the tracker file, or begins a new one. Whatever is found there is kept: an older file is copied before it is
 * changed, a damaged one is put aside and read as far as it goes, a newer or foreign one is left alone.
 *
 * @param file the path (see {@link trackerPath})
 * @param driveOf tells a network drive by name; for tests
 */
export async function openFile(
  file: string,
  driveOf: (folder: string) => string | undefined = networkDriveOf,
): Promise<Opened> {
  const path = resolve(file);
  const blocked = whyNotWritable(path) ?? whyNotBegun(path);
  if (blocked) return { ok: false, problem: blocked };
  const drive = driveOf(dirname(path));
  const notices = drive === undefined ? [] : [networkNotice(drive)];
  try {
    const look = await lookUntilSure(path);
    if (look === 'newer' || look === 'foreign') return { ok: false, problem: problem(look, path) };
    if (look === 'empty') notices.push(...(existsSync(path) ? [EMPTY] : []), ...namesakes(path));
    const isSound = look !== 'damaged' && (look === 'empty' || isSoundFile(path, drive !== undefined, PATIENCE));
    const opened = isSound ? openSound(path, drive !== undefined) : undefined;
    if (opened) return { ok: true, store: opened.store, notices: [...notices, ...opened.notices] };
    setAside(path, new Date());
    const anew = openSound(path, drive !== undefined)!;
    return { ok: true, store: anew.store, notices: [...notices, ...anew.notices] };
  } catch (error) {
    return { ok: false, problem: problemOf(error, path) };
  }
}

/** Opens a file that looks sound; nothing where its rows then show that it is not. */
function openSound(path: string, onNetwork: boolean): { store: FileStore; notices: readonly string[] } | undefined {
  keepToOwner(path);
  const db = new Database(path, { timeout: PATIENCE });
  try {
    // On a network drive one program at a time holds the whole file.
    if (onNetwork) db.exec('PRAGMA locking_mode = EXCLUSIVE');
    keepSafe(db);
    const { user_version: version } = db.prepare('PRAGMA user_version').get([]) as { user_version: number };
    const notices = version < MIGRATIONS.length && sizeOf(path) > 0 ? [copyBeforeUpdate(path, version)] : [];
    if (version < MIGRATIONS.length) migrate(db);
    for (const beside of notYetTakenOver(path, db)) notices.push(takeOverFrom(beside, db));
    const store = new FileStore(db, path);
    return { store, notices: [...notices, ...store.passedOver] };
  } catch (error) {
    db.close();
    if (problemOf(error, path).kind === 'damaged') return undefined;
    throw error;
  }
}

/** A file that another program is just changing is looked at again. */
async function lookUntilSure(path: string): Promise<FileState> {
  for (let times = 1; ; times++) {
    const look = existsSync(path) ? firstLook(path) : 'empty';
    if (look !== 'damaged' || times === LOOKS) return look;
    await setTimeout(BETWEEN_LOOKS);
  }
}

/**
 * Takes over what can be read from a file that was put aside or rescued: all at once, or after a crash another time.
 */
function takeOverFrom(beside: string, db: Database.Database): string {
  const content = recovered(readPages(beside));
  db.exec('BEGIN IMMEDIATE');
  try {
    const taken = takeOver(db, content);
    writeSetting(db, takenOverMark(beside), String(taken.events));
    db.exec('COMMIT');
    return takenOverNotice(beside, taken);
  } catch (error) {
    db.exec('ROLLBACK');
    throw error;
  }
}

/**
 * Every write is on the disk when it is acknowledged, a crash in the middle of one leaves the file as it was before,
 * and the file alone is always whole: a rollback journal, not a write-ahead log (sqlite.org/pragma.html, journal_mode).
 */
function keepSafe(db: Database.Database): void {
  db.pragma('journal_mode = TRUNCATE');
  db.exec('PRAGMA synchronous = FULL');
}

/** Begins the file, or takes it, as one that nobody but its owner may read. */
function keepToOwner(path: string): void {
  closeSync(openSync(path, 'a', OWNER_ONLY));
  try {
    chmodSync(path, OWNER_ONLY);
  } catch {
    // Somebody else's file, or a drive without owners.
    return;
  }
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

/**
 * A new file is never begun beside what was written last to one that is gone: SQLite would take the two for one, or
 * delete the rest.
 */
function whyNotBegun(path: string): Problem | undefined {
  if (sizeOf(path) > 0) return undefined;
  const rest = ['-wal', '-journal'].map((end) => path + end).filter((name) => sizeOf(name) > 0);
  if (rest.length === 0 || (existsSync(path) && !rest.includes(`${path}-wal`))) return undefined;
  return problem('orphan', rest.join(', '));
}

/** Trackers in the same folder whose jobs are gone: perhaps this one, before it was renamed. */
function namesakes(path: string): readonly string[] {
  return readdirSync(dirname(path))
    .filter((name) => name.endsWith(TRACKER_ENDING) && join(dirname(path), name) !== path)
    .filter((name) => {
      const job = join(dirname(path), name.slice(0, -TRACKER_ENDING.length));
      return !['.yaml', '.yml', '.json'].some((end) => existsSync(job + end));
    })
    .map(
      (name) =>
        `A tracker without a job lies here: ${name}. If that is this job’s from before it was renamed, stop, delete ` +
        `${basename(path)}, rename ${name} to it, and start again; otherwise go on.`,
    );
}

function copyBeforeUpdate(path: string, version: number): string {
  let copy = `${path}.version-${version}`;
  for (let again = 2; existsSync(copy); again++) copy = `${path}.version-${version}-${again}`;
  copyFileSync(path, copy);
  return `The tracker file was brought up to date. As it was before: ${copy}`;
}

function takenOverNotice(beside: string, { events, missing }: TakenOver): string {
  const count = `${events} ${events === 1 ? 'entry' : 'entries'}`;
  if (basename(beside).includes('.rescued-'))
    return `The tracker file was taken away while it was in use. ${count} that it had and this one had not were taken over from ${beside}.`;
  const lost = missing.length === 0 ? '' : ` Not to be read any more: ${sayNumbers(missing)}.`;
  return (
    `The tracker file was damaged. It was put aside as ${beside} and a new one begun; ${count} could be read from it and taken over.${lost} ` +
    'Compare the list with the blocks on the bench before you go on.'
  );
}

/** `entries 3 to 7, 12` */
function sayNumbers(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run && run[1] === number - 1) run[1] = number;
    else runs.push([number, number]);
  }
  const said = runs.slice(0, MOST_RUNS).map(([from, to]) => (from === to ? `${from}` : `${from} to ${to}`));
  const more = runs.length > MOST_RUNS ? ` and ${runs.length - MOST_RUNS} more stretches` : '';
  return `${numbers.length === 1 ? 'entry' : `${numbers.length} entries:`} ${said.join(', ')}${more}`;
}

const EMPTY =
  'The tracker file was empty. If anything was ever recorded in it, that is gone: look for a copy before you go on.';

function networkNotice(drive: string): string {
  return (
    `The job lies on a network drive (${drive}). The tracker keeps its file there with the slower, safer journal and lets only one ` +
    'program use it at a time. A folder on this machine is the better place.'
  );
}
