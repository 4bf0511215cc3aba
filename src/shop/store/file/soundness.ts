import Database from 'libsql';
import { problemOf } from './fileProblem.js';

/** SQLITE_CONSTRAINT_CHECK: the verdict was another word than ok. */
const CONSTRAINT_CHECK = 275;

/**
 * Whether SQLite finds the file readable and whole (PRAGMA integrity_check). Done over a connection of its own that
 * prepares nothing: the library keeps a connection open, closed or not, until the last statement prepared on it is
 * collected as garbage, and when it then closes it deletes the write-ahead log by name, which by then may be the log of
 * a new file. So whatever may have to be renamed is looked at this way.
 *
 * @param onNetwork whether the file lies on a network drive, where nobody else may hold it
 * @param patience how long to wait for another program, ms
 * @throws any other error of SQLite
 */
export function isSoundFile(path: string, onNetwork: boolean, patience: number): boolean {
  const db = new Database(path, { timeout: patience });
  try {
    if (onNetwork) db.exec('PRAGMA locking_mode = EXCLUSIVE');
    db.exec('PRAGMA temp_store = MEMORY');
    db.exec("CREATE TEMP TABLE verdict (word TEXT CHECK (word = 'ok'))");
    db.exec('INSERT INTO verdict SELECT integrity_check FROM pragma_integrity_check(1)');
    return true;
  } catch (error) {
    if ((error as { rawCode?: unknown }).rawCode === CONSTRAINT_CHECK) return false;
    if (problemOf(error, path).kind === 'damaged') return false;
    throw error;
  } finally {
    db.close();
  }
}
