import { describe, expect, it } from 'vitest';
import { stageOf } from '../../../src/shop/log/state.js';
import { box, event, NOON, rescueBlocks, step } from '../rescueBoard.js';
import { fileKind, serverKind } from './kinds.js';

const kinds = [fileKind(), serverKind()];
const cut = event({ seq: 1, what: step('R2-07', 'cut') });

describe.each(kinds)('the log in $name', ({ open }) => {
  it('keeps what it was told when it is closed and opened again', async () => {
    const board = 'kept';
    const store = await open(board);
    const done = await store.append([cut], NOON, NOON);
    expect(done).toEqual({ ok: true, value: [{ client: 'phone-one', seq: 1, became: 'stored' }] });
    await store.refresh();
    expect(stageOf(store.state.blocks.get('R2-07'))).toBe('cut');
    await store.close();
    const again = await open(board);
    expect(again.state.last).toBe(1);
    expect(stageOf(again.state.blocks.get('R2-07'))).toBe('cut');
    expect(await again.isSound()).toBe(true);
    await again.close();
  });

  it('counts an event once, however often it is delivered, and alone or with others', async () => {
    const store = await open('once');
    await store.append([cut], NOON, NOON);
    const done = await store.append([cut, event({ seq: 2, what: step('R2-08', 'cut') }), cut], NOON, NOON);
    expect(done.ok && done.value.map(({ became }) => became)).toEqual(['again', 'stored', 'again']);
    expect((await store.eventsAfter(0)).map(({ seq }) => seq)).toEqual([1, 2]);
    await store.close();
  });

  it('does not take another event under a number that was used', async () => {
    const store = await open('clash');
    await store.append([cut], NOON, NOON);
    const done = await store.append([{ ...cut, what: step('R2-09', 'sanded') }], NOON, NOON);
    expect(done.ok && done.value).toEqual([{ client: 'phone-one', seq: 1, became: 'clash' }]);
    expect(await store.eventsAfter(0)).toHaveLength(1);
    await store.close();
  });

  it('sets a wrong clock right and keeps what the clock said', async () => {
    const store = await open('clock');
    await store.append([event({ seq: 1, at: 1000, what: step('R2-07', 'cut') })], 61_000, NOON);
    expect((await store.eventsAfter(0))[0]).toMatchObject({ at: 1000, received: NOON, happened: NOON - 60_000 });
    await store.close();
  });

  it('sees what another program records', async () => {
    const board = 'two';
    const [one, two] = [await open(board), await open(board)];
    await two.append([cut], NOON, NOON);
    expect((await one.refresh()).map(({ number }) => number)).toEqual([1]);
    expect(stageOf(one.state.blocks.get('R2-07'))).toBe('cut');
    await one.close();
    await two.close();
  });
});

describe.each(kinds)('plans in $name', ({ open }) => {
  it('a plan is recorded once, a changed one again, and both are kept', async () => {
    const store = await open('plans');
    const first = await store.recordPlan('Rescue 12', rescueBlocks(), NOON);
    const same = await store.recordPlan('Rescue 12', rescueBlocks(), NOON + 1);
    const other = await store.recordPlan('Rescue 12', [box('R2-07', 180, 100)], NOON + 2);
    expect([first, same, other].map((done) => done.ok && done.value.number)).toEqual([1, 1, 2]);
    expect((await store.plans())[0]!.blocks).toEqual(rescueBlocks());
    expect((await store.plans())[1]!.blocks).toHaveLength(1);
    expect(await store.plans()).toHaveLength(2);
    await store.close();
  });
});

describe.each(kinds)('photos, sessions and settings in $name', ({ open, dump }) => {
  it('the same photo sent twice is one, under its SHA-256', async () => {
    const store = await open('photos');
    const photo = { type: 'image/png', bytes: Buffer.from('abc') } as const;
    const names = [await store.addPhoto(photo, NOON), await store.addPhoto(photo, NOON)].map(
      (done) => done.ok && done.value,
    );
    // FIPS 180-4 example: SHA-256 of "abc".
    const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
    expect(names).toEqual([abc, abc]);
    expect(Buffer.from((await store.photo(abc))!.bytes).toString()).toBe('abc');
    expect(await store.photo('0'.repeat(64))).toBeUndefined();
    await store.close();
  });

  it('a session holds through a restart, for a week after its last use, and until it is forgotten', async () => {
    const board = 'sessions';
    const day = 86_400_000;
    let store = await open(board);
    await store.addSession('token-one', NOON);
    await store.close();
    store = await open(board);
    expect(await store.isSession('token-one', NOON + 6 * day)).toBe(true);
    expect(await store.isSession('token-one', NOON + 12 * day)).toBe(true);
    expect(await store.isSession('token-one', NOON + 20 * day)).toBe(false);
    expect(await store.isSession('token-two', NOON)).toBe(false);
    expect(await dump(board)).not.toContain('token-one');
    expect(await store.forgetSessions()).toEqual({ ok: true, value: 1 });
    expect(await store.isSession('token-one', NOON)).toBe(false);
    await store.close();
  });

  it('a setting is the last one set', async () => {
    const store = await open('settings');
    expect(await store.setting('port')).toBeUndefined();
    await store.setSetting('port', '4718');
    await store.setSetting('port', '4719');
    expect(await store.setting('port')).toBe('4719');
    await store.close();
  });
});
