import Database from 'libsql';
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openFile } from '../../../../src/shop/store/file/openFile.js';
import { trackerPath } from '../../../../src/shop/store/trackerPath.js';
import { EVENT_COLUMNS } from '../../../../src/shop/store/eventRow.js';
import { sealOf } from '../../../../src/shop/store/file/seal.js';
import { sayInLines } from '../../../../src/finding/say.js';
import { box, event, NOON, step } from '../../rescueBoard.js';
import { closedForGood, databaseOf, opened, scratchFolder } from '../scratch.js';

const folder = scratchFolder();
const cuts = (count: number, from = 1) =>
  Array.from({ length: count }, (_, i) =>
    event({ seq: from + i, what: { kind: 'note', block: 'R2-07', text: `note ${from + i} ${'.'.repeat(150)}` } }),
  );

/** A tracker with this many events, closed and wholly in its one file. */
async function written(name: string, count: number): Promise<string> {
  const path = join(folder, name);
  const store = await opened(path);
  await store.recordPlan('Rescue 12', [box('R2-07', 180, 100)], NOON);
  await store.append(cuts(count), NOON, NOON);
  databaseOf(store).pragma('wal_checkpoint(TRUNCATE)');
  await closedForGood(store);
  return path;
}

describe('where the tracker file lies', async () => {
  it('beside the job, under the job’s name', async () => {
    expect(trackerPath('/boards/rescue-12.yaml')).toBe('/boards/rescue-12.tracker.db');
    expect(trackerPath('/boards/rescue-12.YML')).toBe('/boards/rescue-12.tracker.db');
  });

  it('a missing folder is told as such', async () => {
    const result = await openFile(join(folder, 'nowhere', 'a.tracker.db'));
    expect(result).toMatchObject({ ok: false, problem: { kind: 'no-folder', where: join(folder, 'nowhere') } });
  });

  it.skipIf(process.platform === 'win32')(
    'nobody but its owner may read it, one that was begun otherwise neither',
    async () => {
      const path = join(folder, 'owner.tracker.db');
      for (const again of [false, true]) {
        if (again) chmodSync(path, 0o644);
        await closedForGood(await opened(path));
        expect(statSync(path).mode & 0o777).toBe(0o600);
      }
    },
  );

  it('odd names are taken as they are', async () => {
    const path = join(folder, 'Boot 3 #1 ?x=%20 ä.tracker.db');
    await closedForGood(await opened(path));
    expect(existsSync(path)).toBe(true);
  });
});

describe('a damaged tracker file', async () => {
  const asideOf = (path: string) =>
    readdirSync(folder).filter(
      (name) => join(folder, name).startsWith(`${path}.damaged-`) && !/-(wal|shm)$/.test(name),
    );

  it('that is no database at all is put aside unchanged, and a new one begun', async () => {
    const path = join(folder, 'text.tracker.db');
    const bytes = 'somebody saved a letter over it '.repeat(200);
    writeFileSync(path, bytes);
    const result = await openFile(path);
    if (!result.ok) throw new Error(sayInLines(result.problem));
    expect(result.notices[0]).toMatch(
      /was damaged\. It was put aside as .*text\.tracker\.db\.damaged-\d{8}-\d{6} and a new one begun; 0 entries/,
    );
    const [aside] = asideOf(path);
    expect(readFileSync(join(folder, aside!), 'utf8')).toBe(bytes);
    expect((await result.store.append(cuts(1), NOON, NOON)).ok).toBe(true);
    await closedForGood(result.store);
  });

  it('with a page torn out is put aside, and what lies before and behind the hole is saved', async () => {
    const path = await written('torn.tracker.db', 400);
    const bytes = readFileSync(path);
    const middle = Math.floor(bytes.length / 4096 / 2) * 4096;
    bytes.fill(0xa5, middle, middle + 4096);
    writeFileSync(path, bytes);
    const result = await openFile(path);
    if (!result.ok) throw new Error(sayInLines(result.problem));
    const seqs = (await result.store.eventsAfter(0)).map(({ seq }) => seq);
    expect(seqs.length).toBeGreaterThan(380);
    expect(seqs).toContain(1);
    expect(seqs).toContain(400);
    expect(result.notices[0]).toContain(`${seqs.length} entries could be read`);
    expect((await result.store.eventsAfter(0)).every(({ number, seq }) => number === seq)).toBe(true);
    expect((await result.store.plans())[0]?.blocks).toHaveLength(1);
    expect(readFileSync(join(folder, asideOf(path)[0]!)).equals(bytes)).toBe(true);
    expect(await result.store.isSound()).toBe(true);
    await closedForGood(result.store);
  });

  it('cut short is put aside too, and twice in a second under two names', async () => {
    const path = await written('short.tracker.db', 400);
    const bytes = readFileSync(path).subarray(0, 9000);
    for (const time of [1, 2]) {
      writeFileSync(path, bytes);
      const result = await openFile(path);
      if (!result.ok) throw new Error(sayInLines(result.problem));
      await closedForGood(result.store);
      expect(asideOf(path)).toHaveLength(time);
    }
  });
});

describe('a tracker file with an entry that makes no sense', async () => {
  it('opens, says which entries it passes over, and goes on from there', async () => {
    const path = await written('poisoned.tracker.db', 2);
    const db = new Database(path);
    const insert = {
      run: ([seq, at, what, received, happened]: [number, number, string, number, number]) => {
        const row = [seq + 2, 'phone-odd', seq, 0, 1, at, '', 'page', what, received, happened] as const;
        db.prepare(`INSERT INTO event (${EVENT_COLUMNS}, seal) VALUES (?,?,?,?,?,?,?,?,?,?,?,?)`).run([
          ...row,
          sealOf(row),
        ]);
      },
    };
    const cut = JSON.stringify(step('R2-07', 'cut'));
    insert.run([1, NOON, JSON.stringify(step('__proto__', 'cut')), NOON, NOON]);
    insert.run([2, -9e15, cut, NOON, -9e15]);
    insert.run([3, NOON, '{"kind":"step","block":"R2-07","step":"painted","done":true}', NOON, NOON]);
    insert.run([4, NOON, '{"kind":', NOON, NOON]);
    insert.run([5, NOON, JSON.stringify(step('constructor', 'cut')), NOON, NOON]);
    db.close();
    const result = await openFile(path);
    if (!result.ok) throw new Error(sayInLines(result.problem));
    const { store, notices } = result;
    expect(notices).toHaveLength(4);
    expect(notices[0]).toMatch(/^Entry 3 is passed over: .*__proto__/);
    expect(notices[1]).toBe('Entry 4 is passed over: its time is none (-9000000000000000).');
    expect(notices[2]).toMatch(/^Entry 5 is passed over: .*painted/);
    expect([...store.state.blocks.keys()]).toEqual(['R2-07', 'constructor']);
    expect(await store.refresh()).toEqual([]);
    expect(store.passedOver).toHaveLength(4);
    expect((await store.append(cuts(1, 50), NOON, NOON)).ok).toBe(true);
    expect(await store.refresh()).toHaveLength(1);
    expect(await store.eventsAfter(0)).toHaveLength(4);
    await closedForGood(store);
  });
});

describe('a tracker file that is not ours to change', async () => {
  it('of a newer version is left alone', async () => {
    const path = await written('newer.tracker.db', 3);
    const db = new Database(path);
    db.exec('CREATE TABLE tool (name TEXT) STRICT');
    db.exec('PRAGMA user_version = 99');
    db.close();
    const before = readFileSync(path);
    const result = await openFile(path);
    expect(result).toMatchObject({ ok: false, problem: { kind: 'newer' } });
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it('of some other program is left alone', async () => {
    const path = join(folder, 'foreign.tracker.db');
    const db = new Database(path);
    db.exec("CREATE TABLE recipe (name TEXT); INSERT INTO recipe VALUES ('soup')");
    db.close();
    const before = readFileSync(path);
    expect(await openFile(path)).toMatchObject({ ok: false, problem: { kind: 'foreign' } });
    expect(readFileSync(path).equals(before)).toBe(true);
  });
});

describe('a folder nobody may write to', async () => {
  // The system lets root write anywhere, so the check is made as nobody where we are root (SQLite then meets the wall
  // itself; `access` goes by who started us).
  it('is told, and the tracker in it stays as it is', async () => {
    const inside = join(folder, 'read-only');
    mkdirSync(inside);
    chmodSync(folder, 0o755);
    const path = join(inside, 'a.tracker.db');
    await closedForGood(await opened(path));
    const before = readFileSync(path);
    chmodSync(path, 0o444);
    chmodSync(inside, 0o555);
    const isRoot = process.getuid?.() === 0;
    if (isRoot) process.seteuid!(65534);
    try {
      const result = await openFile(path);
      expect(result).toMatchObject({ ok: false, problem: { kind: 'read-only', where: path } });
      if (!result.ok) expect(sayInLines(result.problem)).toMatch(/read-only[\s\S]*Copy the job file/);
    } finally {
      if (isRoot) process.seteuid!(0);
      chmodSync(inside, 0o755);
    }
    expect(readFileSync(path).equals(before)).toBe(true);
  });
});

describe('a disk that fills up', async () => {
  it('stops the recording with a message, keeps what was acknowledged, and goes on once there is room', async () => {
    const path = join(folder, 'full.tracker.db');
    const store = await opened(path);
    const pages = (databaseOf(store).pragma('page_count') as { page_count: number }[])[0]!.page_count;
    databaseOf(store).pragma(`max_page_count = ${pages + 4}`); // SQLite's own limit gives the same SQLITE_FULL as the disk.
    let acknowledged = 0;
    let said = '';
    while (said === '') {
      const done = await store.append(cuts(5, acknowledged + 1), NOON, NOON);
      if (done.ok) acknowledged += 5;
      else said = sayInLines(done.problem);
    }
    expect(said).toMatch(/The disk is full[\s\S]*phones keep what they could not send/);
    expect(await store.eventsAfter(0)).toHaveLength(acknowledged);
    expect(await store.isSound()).toBe(true);
    databaseOf(store).pragma('max_page_count = 100000');
    expect((await store.append(cuts(5, acknowledged + 1), NOON, NOON)).ok).toBe(true);
    await closedForGood(store);
  });

  const disk = smallDisk(join(folder, 'small-disk'));
  it.skipIf(disk === undefined)('really: a disk of 400 kB', async () => {
    try {
      const store = await opened(join(disk!, 'a.tracker.db'));
      let acknowledged = 0;
      let problem = '';
      while (problem === '' && acknowledged < 20_000) {
        const done = await store.append(cuts(10, acknowledged + 1), NOON, NOON);
        if (done.ok) acknowledged += 10;
        else problem = done.problem.kind;
      }
      expect(problem).toBe('full');
      expect(await store.eventsAfter(0)).toHaveLength(acknowledged);
      await closedForGood(store);
      const again = await openFile(join(disk!, 'a.tracker.db'));
      if (!again.ok) throw new Error(sayInLines(again.problem));
      expect(await again.store.eventsAfter(0)).toHaveLength(acknowledged);
      expect(await again.store.isSound()).toBe(true);
      await closedForGood(again.store);
    } finally {
      execFileSync('umount', [disk!]);
    }
  });
});

describe('a network drive', async () => {
  it('is held by one program at a time, and that is said', async () => {
    const path = join(folder, 'network.tracker.db');
    const one = await openFile(path, () => 'NFS');
    if (!one.ok) throw new Error(sayInLines(one.problem));
    expect(one.notices).toContainEqual(expect.stringContaining('The job lies on a network drive (NFS).'));
    expect(databaseOf(one.store).pragma('journal_mode')).toEqual([{ journal_mode: 'truncate' }]);
    await one.store.append(cuts(1), NOON, NOON);
    expect(await openFile(path, () => 'NFS')).toMatchObject({ ok: false, problem: { kind: 'busy' } });
    await closedForGood(one.store);
    expect(statSync(path).size).toBeGreaterThan(0);
    expect(existsSync(`${path}-wal`)).toBe(false);
    await closedForGood(await opened(path));
  });

  it('takes a file that was begun on a disk of this machine', async () => {
    const path = join(folder, 'moved-to-network.tracker.db');
    const local = await opened(path);
    await local.append([event({ seq: 1, what: step('R2-07', 'cut') })], NOON, NOON);
    await closedForGood(local);
    const there = await openFile(path, () => 'SMB');
    if (!there.ok) throw new Error(sayInLines(there.problem));
    expect(await there.store.eventsAfter(0)).toHaveLength(1);
    expect(databaseOf(there.store).pragma('journal_mode')).toEqual([{ journal_mode: 'truncate' }]);
    await closedForGood(there.store);
  });
});

/** A file system of its own, where the machine lets us have one. */
function smallDisk(at: string): string | undefined {
  mkdirSync(at);
  return spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=400k', 'tmpfs', at]).status === 0 ? at : undefined;
}
