import Database from 'libsql';
import { renameSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { event, NOON, step } from '../../rescueBoard.js';
import { databaseOf, opened, scratchFolder } from '../scratch.js';

const folder = scratchFolder();
const cut = event({ seq: 1, what: step('R2-07', 'cut') });

describe('the tracker file', () => {
  it('writes through to the disk, and into the file itself (SQLite: a rollback journal, synchronous = FULL, which is 2)', async () => {
    const path = join(folder, 'modes.tracker.db');
    const store = await opened(path);
    const db = databaseOf(store);
    expect(db.pragma('journal_mode')).toEqual([{ journal_mode: 'truncate' }]);
    expect(db.pragma('synchronous')).toEqual([{ synchronous: 2 }]);
    await store.close();
  });

  it('refuses to change or delete what was recorded, even from outside', async () => {
    const path = join(folder, 'final.tracker.db');
    const store = await opened(path);
    await store.append([cut], NOON, NOON);
    const other = new Database(path);
    expect(() => other.exec('DELETE FROM event')).toThrow('events are only ever added');
    expect(() => other.exec("UPDATE event SET who = 'somebody'")).toThrow('events are only ever added');
    await other.close();
    await store.close();
  });

  it('writes nothing to a file that was moved away under it', async () => {
    const path = join(folder, 'moved.tracker.db');
    const store = await opened(path);
    renameSync(path, `${path}.elsewhere`);
    expect(await store.append([cut], NOON, NOON)).toMatchObject({ ok: false, problem: { kind: 'moved', where: path } });
    await store.close();
  });

  it('says that another program holds it, and takes the same event later', async () => {
    const path = join(folder, 'busy.tracker.db');
    const store = await opened(path);
    const other = new Database(path);
    other.exec('BEGIN IMMEDIATE');
    expect(await store.append([cut], NOON, NOON)).toMatchObject({ ok: false, problem: { kind: 'busy' } });
    other.exec('COMMIT');
    expect(await store.append([cut], NOON, NOON)).toMatchObject({ ok: true, value: [{ became: 'stored' }] });
    await other.close();
    await store.close();
  });
});
