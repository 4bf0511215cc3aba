import Database from 'libsql';
import { copyFileSync, existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { firstLook, sizeOf } from '../../../../src/shop/store/file/firstLook.js';
import { APPLICATION_ID, migrate, MIGRATIONS, schemas } from '../../../../src/shop/store/file/schema.js';
import { openFile } from '../../../../src/shop/store/file/openFile.js';
import { NOON } from '../../rescueBoard.js';
import { scratchFolder } from '../scratch.js';

const folder = scratchFolder();
const LATER = [...MIGRATIONS, 'ALTER TABLE event ADD COLUMN place TEXT', 'CREATE TABLE tool (name TEXT) STRICT'];

describe('the version of a tracker file', async () => {
  it('an empty file becomes a current one, marked as ours', async () => {
    const path = join(folder, 'empty.db');
    const db = new Database(path);
    expect(firstLook(path)).toBe('empty');
    migrate(db);
    expect(firstLook(path)).toBe('current');
    expect(db.pragma('application_id')).toEqual([{ application_id: APPLICATION_ID }]);
    db.close();
  });

  it('an older file is brought up by the steps it lacks and keeps its rows', async () => {
    const path = join(folder, 'older.db');
    const db = new Database(path);
    migrate(db);
    db.exec("INSERT INTO setting VALUES ('port', '4718', 0)");
    expect(firstLook(path, schemas(LATER))).toBe('older');
    migrate(db, LATER);
    migrate(db, LATER);
    expect(firstLook(path, schemas(LATER))).toBe('current');
    expect(db.prepare('SELECT value FROM setting').get([])).toMatchObject({ value: '4718' });
    expect(firstLook(path)).toBe('newer');
    db.close();
  });

  it('a step that fails leaves the file as it was', async () => {
    const path = join(folder, 'half.db');
    const db = new Database(path);
    migrate(db);
    expect(() => migrate(db, [...LATER, 'CREATE TABLE event (a)'])).toThrow('already exists');
    expect(firstLook(path)).toBe('current');
    expect(() => db.prepare('SELECT * FROM tool')).toThrow();
    db.close();
  });

  it('a file of the first version, with its newest entries in a log beside it, is taken whole', async () => {
    const path = join(folder, 'first.tracker.db');
    const db = new Database(path);
    db.pragma('journal_mode = WAL');
    migrate(db, MIGRATIONS.slice(0, 1));
    const insert = db.prepare(
      "INSERT INTO event (client, seq, seen, plan, at, who, via, what, received, happened) VALUES ('phone-one', ?, 0, 1, ?, 'Ädä', 'page', ?, ?, ?)",
    );
    for (let seq = 1; seq <= 50; seq++)
      insert.run([seq, NOON, JSON.stringify({ kind: 'note', block: 'R2-07', text: `Nr. ${seq} – ☂` }), NOON, NOON]);
    // As a program that was killed leaves the two files.
    for (const end of ['', '-wal']) copyFileSync(path + end, join(folder, `killed.tracker.db${end}`));
    db.close();
    expect(statSync(join(folder, 'killed.tracker.db')).size).toBeLessThan(10_000);
    const result = await openFile(join(folder, 'killed.tracker.db'));
    if (!result.ok) throw new Error(result.problem.what);
    expect(result.notices.filter((notice) => !notice.includes('without a job'))).toEqual([
      expect.stringMatching(/brought up to date.*killed\.tracker\.db\.version-1$/),
    ]);
    expect((await result.store.eventsAfter(0)).map(({ seq }) => seq)).toEqual(
      Array.from({ length: 50 }, (_, i) => i + 1),
    );
    expect(sizeOf(join(folder, 'killed.tracker.db-wal'))).toBe(0);
    await result.store.close();
    const again = await openFile(join(folder, 'killed.tracker.db'));
    expect(again).toMatchObject({ ok: true, notices: [] });
    if (again.ok) await again.store.close();
  });

  it('before an older file is changed, it is copied', async () => {
    const path = join(folder, 'copied.tracker.db');
    const db = new Database(path);
    db.exec(`PRAGMA application_id = ${APPLICATION_ID}`); // version 0: a file begun and never filled
    db.close();
    const result = await openFile(path);
    if (!result.ok) throw new Error(result.problem.what);
    expect(result.notices).toEqual([`The tracker file was brought up to date. As it was before: ${path}.version-0`]);
    expect(existsSync(`${path}.version-0`)).toBe(true);
    await result.store.close();
  });
});
