import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { stageOf } from '../../src/shop/log/state.js';
import { STEPS } from '../../src/shop/log/step.js';
import { shopFrom, type ToldShop } from '../../src/shop/report/wholeShop.js';
import { event, rescueBlocks, step } from './rescueBoard.js';
import { running, send } from './running.js';
import { scratchFolder } from './store/scratch.js';

const folder = scratchFolder();
const DEVICES = 20;
const SECONDS = 5;

describe('twenty devices at once', () => {
  // Correctness only; how fast it is, the benchmark says (scripts/bench-shop.mjs).
  it('pressing for five seconds lose nothing and double nothing, though every third delivery comes twice', async () => {
    const server = await running(join(folder, 'load.tracker.db'));
    const blocks = rescueBlocks();
    const end = Date.now() + SECONDS * 1000;
    const sent = await Promise.all(
      Array.from({ length: DEVICES }, async (_, device) => {
        let seq = 0;
        while (Date.now() < end) {
          seq++;
          const what = step(blocks[(device * 5 + seq) % blocks.length]!.id, STEPS[seq % STEPS.length]!);
          const one = event({ client: `device-${String(device).padStart(2, '0')}`, seq, what });
          const answers = [await send(server, [one])];
          if (seq % 3 === 0) answers.push(await send(server, [one]));
          expect(answers.map(({ status, outcomes }) => [status, outcomes[0]!.became])).toEqual(
            [
              [200, 'stored'],
              [200, 'again'],
            ].slice(0, answers.length),
          );
          await setTimeout(300);
        }
        return seq;
      }),
    );
    const response = await fetch(`http://127.0.0.1:${server.port}/api/shop`, {
      headers: { Authorization: `Bearer ${server.token}` },
    });
    const { state } = shopFrom((await response.json()) as ToldShop);
    const total = sent.reduce((sum, count) => sum + count, 0);
    expect(state.last).toBe(total);
    expect(total).toBeGreaterThanOrEqual(DEVICES);
    expect([...state.blocks.values()].every((block) => stageOf(block) !== undefined)).toBe(true);
    await server.stop();
  });
});
