import Database from 'libsql';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { APPLICATION_ID, fileState, migrate, MIGRATIONS } from '../../../src/shop/store/schema.js';
import { openStore } from '../../../src/shop/store/openStore.js';
import { scratchFolder } from './scratch.js';

const folder = scratchFolder();
const LATER = [...MIGRATIONS, 'ALTER TABLE event ADD COLUMN place TEXT', 'CREATE TABLE tool (name TEXT) STRICT'];

describe('the version of a tracker file', () => {
  it('an empty file becomes a current one, marked as ours', () => {
    const db = new Database(join(folder, 'empty.db'));
    expect(fileState(db)).toBe('empty');
    migrate(db);
    expect(fileState(db)).toBe('current');
    expect(db.pragma('application_id')).toEqual([{ application_id: APPLICATION_ID }]);
    db.close();
  });

  it('an older file is brought up by the steps it lacks and keeps its rows', () => {
    const db = new Database(join(folder, 'older.db'));
    migrate(db);
    db.exec("INSERT INTO setting VALUES ('port', '4718')");
    expect(fileState(db, LATER)).toBe('older');
    migrate(db, LATER);
    migrate(db, LATER);
    expect(fileState(db, LATER)).toBe('current');
    expect(db.prepare('SELECT value FROM setting').get([])).toMatchObject({ value: '4718' });
    expect(fileState(db)).toBe('newer');
    db.close();
  });

  it('a step that fails leaves the file as it was', () => {
    const db = new Database(join(folder, 'half.db'));
    migrate(db);
    expect(() => migrate(db, [...LATER, 'CREATE TABLE event (a)'])).toThrow('already exists');
    expect(fileState(db)).toBe('current');
    expect(() => db.prepare('SELECT * FROM tool')).toThrow();
    db.close();
  });

  it('before an older file is changed, it is copied', () => {
    const path = join(folder, 'copied.tracker.db');
    const db = new Database(path);
    db.exec(`PRAGMA application_id = ${APPLICATION_ID}`); // version 0: a file begun and never filled
    db.close();
    const result = openStore(path);
    if (!result.ok) throw new Error(result.problem.what);
    expect(result.notices).toEqual([`The tracker file was brought up to date. As it was before: ${path}.version-0`]);
    expect(existsSync(`${path}.version-0`)).toBe(true);
    result.store.close();
  });
});
