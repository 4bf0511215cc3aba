import Database from 'libsql';
import { renameSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stageOf } from '../../../src/shop/state.js';
import { box, event, NOON, rescueBlocks, step } from '../rescueBoard.js';
import { opened, scratchFolder } from './scratch.js';

const folder = scratchFolder();
const cut = event({ seq: 1, what: step('R2-07', 'cut') });

describe('the tracker file', () => {
  it('keeps what it was told when it is closed and opened again', () => {
    const path = join(folder, 'kept.tracker.db');
    const store = opened(path);
    const done = store.append([cut], NOON, NOON);
    expect(done).toEqual({ ok: true, value: [{ client: 'phone-one', seq: 1, became: 'stored' }] });
    store.refresh();
    expect(stageOf(store.state.blocks.get('R2-07'))).toBe('cut');
    store.close();
    const again = opened(path);
    expect(again.state.last).toBe(1);
    expect(stageOf(again.state.blocks.get('R2-07'))).toBe('cut');
    expect(again.isSound()).toBe(true);
    again.close();
  });

  it('writes ahead and through to the disk (SQLite: WAL, synchronous = FULL, which is 2)', () => {
    const path = join(folder, 'modes.tracker.db');
    const store = opened(path);
    const db = store['db'];
    expect(db.pragma('journal_mode')).toEqual([{ journal_mode: 'wal' }]);
    expect(db.pragma('synchronous')).toEqual([{ synchronous: 2 }]);
    store.close();
  });

  it('counts an event once, however often it is delivered, and alone or with others', () => {
    const store = opened(join(folder, 'once.tracker.db'));
    store.append([cut], NOON, NOON);
    const done = store.append([cut, event({ seq: 2, what: step('R2-08', 'cut') }), cut], NOON, NOON);
    expect(done.ok && done.value.map(({ became }) => became)).toEqual(['again', 'stored', 'again']);
    expect(store.eventsAfter(0).map(({ seq }) => seq)).toEqual([1, 2]);
    store.close();
  });

  it('does not take another event under a number that was used', () => {
    const store = opened(join(folder, 'clash.tracker.db'));
    store.append([cut], NOON, NOON);
    const done = store.append([{ ...cut, what: step('R2-09', 'sanded') }], NOON, NOON);
    expect(done.ok && done.value).toEqual([{ client: 'phone-one', seq: 1, became: 'clash' }]);
    expect(store.eventsAfter(0)).toHaveLength(1);
    store.close();
  });

  it('sets a wrong clock right and keeps what the clock said', () => {
    const store = opened(join(folder, 'clock.tracker.db'));
    store.append([event({ seq: 1, at: 1000, what: step('R2-07', 'cut') })], 61_000, NOON);
    expect(store.eventsAfter(0)[0]).toMatchObject({ at: 1000, received: NOON, happened: NOON - 60_000 });
    store.close();
  });

  it('refuses to change or delete what was recorded, even from outside', () => {
    const path = join(folder, 'final.tracker.db');
    const store = opened(path);
    store.append([cut], NOON, NOON);
    const other = new Database(path);
    expect(() => other.exec('DELETE FROM event')).toThrow('events are only ever added');
    expect(() => other.exec("UPDATE event SET who = 'somebody'")).toThrow('events are only ever added');
    other.close();
    store.close();
  });

  it('sees what another program records', () => {
    const path = join(folder, 'two.tracker.db');
    const [one, two] = [opened(path), opened(path)];
    two.append([cut], NOON, NOON);
    expect(one.refresh().map(({ number }) => number)).toEqual([1]);
    expect(stageOf(one.state.blocks.get('R2-07'))).toBe('cut');
    one.close();
    two.close();
  });

  it('writes nothing to a file that was moved away under it', () => {
    const path = join(folder, 'moved.tracker.db');
    const store = opened(path);
    renameSync(path, `${path}.elsewhere`);
    expect(store.append([cut], NOON, NOON)).toMatchObject({ ok: false, problem: { kind: 'moved', where: path } });
    store.close();
  });

  it('says that another program holds it, and takes the same event later', () => {
    const path = join(folder, 'busy.tracker.db');
    const store = opened(path);
    const other = new Database(path);
    other.exec('BEGIN IMMEDIATE');
    expect(store.append([cut], NOON, NOON)).toMatchObject({ ok: false, problem: { kind: 'busy' } });
    other.exec('COMMIT');
    expect(store.append([cut], NOON, NOON)).toMatchObject({ ok: true, value: [{ became: 'stored' }] });
    other.close();
    store.close();
  });
});

describe('plans in the tracker file', () => {
  it('a plan is recorded once, a changed one again, and both are kept', () => {
    const store = opened(join(folder, 'plans.tracker.db'));
    const first = store.recordPlan('Rescue 12', rescueBlocks(), NOON);
    const same = store.recordPlan('Rescue 12', rescueBlocks(), NOON + 1);
    const other = store.recordPlan('Rescue 12', [box('R2-07', 180, 100)], NOON + 2);
    expect([first, same, other].map((done) => done.ok && done.value.number)).toEqual([1, 1, 2]);
    expect(store.plan(1)?.blocks).toEqual(rescueBlocks());
    expect(store.newestPlan()?.blocks).toHaveLength(1);
    expect(store.plan(3)).toBeUndefined();
    store.close();
  });
});

describe('photos, sessions and settings', () => {
  it('the same photo sent twice is one, under its SHA-256', () => {
    const store = opened(join(folder, 'photos.tracker.db'));
    const photo = { type: 'image/png', bytes: Buffer.from('abc') } as const;
    const names = [store.addPhoto(photo, NOON), store.addPhoto(photo, NOON)].map((done) => done.ok && done.value);
    // FIPS 180-4 example: SHA-256 of "abc".
    const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
    expect(names).toEqual([abc, abc]);
    expect(Buffer.from(store.photo(abc)!.bytes).toString()).toBe('abc');
    expect(store.photo('0'.repeat(64))).toBeUndefined();
    store.close();
  });

  it('a session holds through a restart, for a week after its last use, and until it is forgotten', () => {
    const path = join(folder, 'sessions.tracker.db');
    const day = 86_400_000;
    let store = opened(path);
    store.addSession('token-one', NOON);
    store.close();
    store = opened(path);
    expect(store.isSession('token-one', NOON + 6 * day)).toBe(true);
    expect(store.isSession('token-one', NOON + 12 * day)).toBe(true);
    expect(store.isSession('token-one', NOON + 20 * day)).toBe(false);
    expect(store.isSession('token-two', NOON)).toBe(false);
    expect(JSON.stringify(store['db'].prepare('SELECT * FROM session').all([]))).not.toContain('token-one');
    expect(store.forgetSessions()).toEqual({ ok: true, value: 1 });
    expect(store.isSession('token-one', NOON)).toBe(false);
    store.close();
  });

  it('a setting is the last one set', () => {
    const store = opened(join(folder, 'settings.tracker.db'));
    expect(store.setting('port')).toBeUndefined();
    store.setSetting('port', '4718');
    store.setSetting('port', '4719');
    expect(store.setting('port')).toBe('4719');
    store.close();
  });
});
