import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Bench, PATIENCE } from '../../src/bench/bench.js';
import { answerTo } from '../../src/bench/plan/answer.js';
import { sample } from './read.js';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** A bench whose planner answers when it is told to, and what it has told the page. */
function benchOf(name: string) {
  let question = 0;
  const written = { name, text: sample(name), beside: {}, version: '' };
  const bench = new Bench(written, { ask: () => ++question });
  const answer = () => {
    const { shown, ...rest } = answerTo({ number: question, which: 'this', written }, new Map());
    bench.arrived({ ...rest, shown: { ...shown!, grid: shown!.grid! } });
  };
  answer();
  const told: boolean[] = [];
  bench.subscribe(() => told.push(bench.now.isCurrent));
  return { bench, answer, told };
}

test('a change is drawn once, with its plan, when that comes soon', async () => {
  const { bench, answer, told } = benchOf('mere-prone.yaml');
  bench.change((text) => `${text}# changed\n`);
  expect(bench.now.history.text).toContain('# changed');
  await vi.advanceTimersByTimeAsync(PATIENCE - 1);
  expect(told).toEqual([]);
  answer();
  await vi.advanceTimersByTimeAsync(10 * PATIENCE);
  expect(told).toEqual([true]);
});

test('a change whose plan is late is drawn before it', async () => {
  const { bench, answer, told } = benchOf('mere-prone.yaml');
  bench.change((text) => `${text}# changed\n`);
  bench.change((text) => `${text}# and changed again\n`);
  await vi.advanceTimersByTimeAsync(PATIENCE);
  expect(told).toEqual([false]);
  answer();
  expect(told).toEqual([false, true]);
});
