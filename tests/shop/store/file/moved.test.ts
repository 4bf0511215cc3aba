import {
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openFile } from '../../../../src/shop/store/file/openFile.js';
import type { ShopStore } from '../../../../src/shop/store/shopStore.js';
import { event, NOON, rescueBlocks, step } from '../../rescueBoard.js';
import { closedForGood, opened, scratchFolder } from '../scratch.js';

const folder = scratchFolder();
const presses = (count: number, from = 1, client = 'phone-one') =>
  Array.from({ length: count }, (_, i) => event({ client, seq: from + i, what: step('R2-07', 'cut') }));
const seqs = async (store: ShopStore, client = 'phone-one') =>
  (await store.eventsAfter(0)).filter((one) => one.client === client).map(({ seq }) => seq);
const upTo = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

/** A tracker in use, with fifty entries that were acknowledged. */
async function inUse(name: string): Promise<{ store: ShopStore; path: string }> {
  const path = join(folder, `${name}.tracker.db`);
  const store = await opened(path);
  await store.recordPlan('Rescue 12', rescueBlocks(), NOON);
  expect((await store.append(presses(50), NOON, NOON)).ok).toBe(true);
  await store.refresh();
  return { store, path };
}

const besides = (path: string, word: string) =>
  readdirSync(folder).filter((name) => name.startsWith(`${basename(path)}.${word}-`));

describe('the file alone', () => {
  it('holds everything that was acknowledged, at every moment', async () => {
    const { store, path } = await inUse('alone');
    for (let seq = 51; seq <= 60; seq++) {
      await store.append(presses(1, seq), NOON, NOON);
      copyFileSync(path, join(folder, 'copy.tracker.db'));
      const copy = await opened(join(folder, 'copy.tracker.db'));
      expect(await seqs(copy)).toEqual(upTo(seq));
      await closedForGood(copy);
      rmSync(join(folder, 'copy.tracker.db'));
    }
    await closedForGood(store);
  });
});

describe('a tracker whose file is moved away while it is in use', () => {
  it('refuses what comes then, a second one begins anew, and after putting the file back all fifty are there', async () => {
    const { store, path } = await inUse('moved');
    renameSync(path, join(folder, 'elsewhere'));
    expect(await store.append(presses(1, 51), NOON, NOON)).toMatchObject({ ok: false, problem: { kind: 'moved' } });
    const second = await opened(path);
    expect(await seqs(second), 'taken over from what was rescued').toEqual(upTo(50));
    await closedForGood(second);
    await closedForGood(store);
    renameSync(join(folder, 'elsewhere'), path);
    const again = await opened(path);
    expect(await seqs(again)).toEqual(upTo(50));
    expect(await again.isSound()).toBe(true);
    await closedForGood(again);
  });

  it('goes on by itself once the file is back', async () => {
    const { store, path } = await inUse('back');
    renameSync(path, join(folder, 'away'));
    await expect(store.refresh()).rejects.toThrow('was moved, renamed, replaced or deleted');
    renameSync(join(folder, 'away'), path);
    expect((await store.append(presses(1, 51), NOON, NOON)).ok).toBe(true);
    expect(await seqs(store)).toEqual(upTo(51));
    await closedForGood(store);
  });

  it('keeps what both files have, where work went on in the new one', async () => {
    const { store, path } = await inUse('both');
    await store.addPhoto({ type: 'image/png', bytes: Buffer.from('photo') }, NOON);
    rmSync(path);
    const second = await opened(path);
    await second.recordPlan('Rescue 12 b', rescueBlocks().slice(1), NOON);
    await second.append(presses(5, 1, 'phone-two'), NOON, NOON);
    await expect(store.refresh()).rejects.toThrow('was moved');
    await closedForGood(store);
    await closedForGood(second);
    const third = await openFile(path);
    if (!third.ok) throw new Error(third.problem.what);
    expect(third.notices).toEqual([
      expect.stringMatching(/50 entries that it had and this one had not were taken over/),
    ]);
    expect(await seqs(third.store)).toEqual(upTo(50));
    expect(await seqs(third.store, 'phone-two')).toEqual(upTo(5));
    const plans = await third.store.plans();
    expect(plans.map(({ job }) => job)).toEqual(['Rescue 12 b', 'Rescue 12']);
    const old = (await third.store.eventsAfter(0)).find(({ client }) => client === 'phone-one')!;
    expect(plans.find(({ number }) => number === old.plan)!.job, 'each entry keeps its own plan').toBe('Rescue 12');
    expect((await third.store.content()).photos).toHaveLength(1);
    await closedForGood(third.store);
    expect(await openFile(path)).toMatchObject({ ok: true, notices: [] });
  });
});

describe('a tracker whose file is lost or becomes another while it is in use', () => {
  it.each([
    ['deleted', (path: string) => rmSync(path)],
    ['replaced', (path: string) => renameSync(join(folder, 'older.tracker.db'), path)],
    ['written over with an older copy', (path: string) => copyFileSync(join(folder, 'older.tracker.db'), path)],
    ['written over with a letter', (path: string) => writeFileSync(path, 'Dear club, '.repeat(900))],
    ['emptied', (path: string) => truncateSync(path, 0)],
    ['cut short', (path: string) => truncateSync(path, 9000)],
  ])('%s: everything acknowledged is found at the next start', async (word, harm) => {
    const name = `lost-${word.replaceAll(' ', '-')}`;
    const { store, path } = await inUse(name);
    copyFileSync(path, join(folder, 'older.tracker.db'));
    await store.append(presses(20, 51), NOON, NOON);
    await store.refresh();
    harm(path);
    const done = await store.append(presses(1, 71), NOON, NOON);
    if (word !== 'cut short') expect(done.ok).toBe(false);
    await store.refresh().catch(() => undefined);
    await closedForGood(store);
    const again = await opened(path);
    const found = await seqs(again);
    expect(found.slice(0, 70)).toEqual(upTo(70));
    expect(found.includes(71)).toBe(done.ok);
    expect(new Set(found).size).toBe(found.length);
    expect(await again.isSound()).toBe(true);
    await closedForGood(again);
    rmSync(join(folder, 'older.tracker.db'), { force: true });
  });
});

describe('what is left of a file that is gone', () => {
  it.each(['-wal', '-journal'])('a new tracker is not begun beside an orphan %s, which stays as it is', async (end) => {
    const path = join(folder, `orphan${end}.tracker.db`);
    writeFileSync(path + end, 'the newest entries of a file that was moved');
    expect(await openFile(path)).toMatchObject({ ok: false, problem: { kind: 'orphan', where: path + end } });
    expect(existsSync(path)).toBe(false);
    expect(readFileSync(path + end, 'utf8')).toBe('the newest entries of a file that was moved');
  });

  it('a tracker of the job’s old name is told when a new one is begun, one with its job beside it is not', async () => {
    await closedForGood(await opened(join(folder, 'lake-12.tracker.db')));
    await closedForGood(await opened(join(folder, 'lake-13.tracker.db')));
    writeFileSync(join(folder, 'lake-13.yaml'), '');
    const renamed = await openFile(join(folder, 'lake-14.tracker.db'));
    if (!renamed.ok) throw new Error(renamed.problem.what);
    const said = renamed.notices.join('\n');
    expect(said).toContain('A tracker without a job lies here: lake-12.tracker.db.');
    expect(said).not.toContain('lake-13');
    await closedForGood(renamed.store);
    expect(besides(join(folder, 'lake-12.tracker.db'), 'rescued')).toEqual([]);
  });
});
