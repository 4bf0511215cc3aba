import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { seeded } from '../../src/block/nest/seeded.js';
import type { ShopEvent } from '../../src/shop/log/event.js';
import { built } from './built.js';
import { event, step } from './rescueBoard.js';
import { running, send } from './running.js';
import { closedForGood, opened, scratchFolder } from './store/scratch.js';

const folder = scratchFolder();
const LANES = 2;
/** As many more as one likes: KILLS=200. */
const KILLS_A_LANE = Number(process.env['KILLS'] ?? 60) / LANES;
/**
 * A lost event stays lost and a damaged file is put aside, so looking now and then, and at the end, sees everything.
 */
const LOOK_EVERY = 20;
const SEED = 20260314;

describe('a server killed in the middle of its work', async () => {
  beforeAll(async () => void (await built()));

  it(`${LANES * KILLS_A_LANE} times, at random moments under writes, has every acknowledged event and a sound file`, async () => {
    const lanes = await Promise.all(Array.from({ length: LANES }, (_, lane) => killAgainAndAgain(lane)));
    const total = (of: (lane: (typeof lanes)[number]) => number) => lanes.reduce((sum, lane) => sum + of(lane), 0);
    expect(total(({ kills }) => kills)).toBe(LANES * KILLS_A_LANE);
    expect(total(({ lost }) => lost)).toBe(0);
    expect(total(({ unsound }) => unsound)).toBe(0);
    // The kills came while events were on their way, or this proves nothing.
    expect(total(({ acknowledged }) => acknowledged)).toBeGreaterThan(LANES * KILLS_A_LANE);
    expect(total(({ unanswered }) => unanswered)).toBeGreaterThan((LANES * KILLS_A_LANE) / 2);
  }, 1_200_000);
});

async function killAgainAndAgain(lane: number) {
  const tracker = join(folder, `lane-${lane}.tracker.db`);
  const random = seeded(SEED + lane);
  const acknowledged = new Set<string>();
  const counts = { kills: 0, acknowledged: 0, unanswered: 0, lost: 0, unsound: 0 };
  let seq = 0;
  for (let round = 0; round < KILLS_A_LANE; round++) {
    const server = await running(tracker);
    let killed = false;
    const press = async (client: string): Promise<void> => {
      while (!killed) {
        const events: ShopEvent[] = Array.from({ length: 1 + Math.floor(random() * 4) }, () =>
          event({ client, seq: ++seq, what: step('R2-07', 'cut') }),
        );
        try {
          const { status } = await send(server, events);
          if (status === 200) for (const { seq: number } of events) acknowledged.add(`${client} ${number}`);
        } catch {
          counts.unanswered++;
          return;
        }
      }
    };
    const pressing = [press('phone-one'), press('phone-two'), press('phone-three')];
    // By what was acknowledged and not by the clock, so that a slow machine is killed in the middle of its work too.
    const enough = acknowledged.size + 1 + Math.floor(random() * 8);
    while (acknowledged.size < enough && server.process.exitCode === null) await setTimeout(1);
    await setTimeout(random() * 10);
    killed = true;
    await server.stop('SIGKILL');
    await Promise.all(pressing);
    counts.kills++;
    if (counts.kills % LOOK_EVERY > 0) continue;
    const store = await opened(tracker);
    const there = new Set((await store.eventsAfter(0)).map(({ client, seq: number }) => `${client} ${number}`));
    counts.lost += [...acknowledged].filter((one) => !there.has(one)).length;
    counts.unsound += (await store.isSound()) ? 0 : 1;
    await closedForGood(store);
  }
  counts.unsound += readdirSync(folder).filter(
    (name) => name.startsWith(`lane-${lane}.`) && name.includes('damaged'),
  ).length;
  return { ...counts, acknowledged: acknowledged.size };
}
