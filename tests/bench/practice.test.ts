import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Bench } from '../../src/bench/state/bench.js';
import { withValue } from '../../src/job/edit/value.js';
import { answerTo, type Known, type Question } from '../../src/bench/plan/answer.js';
import { PlanFeed, type Worked } from '../../src/bench/plan/feed.js';
import { Practice } from '../../src/bench/practice.js';
import { planOf } from '../../src/plan.js';
import { resultOf } from '../../src/view/result.js';
import { jobOf, sample } from './read.js';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** A bench with its worker at hand, which answers as soon as the page lets it. */
function benchWith(name: string) {
  const known: Known = {};
  const asked: Question[] = [];
  const worker: Worked = { postMessage: later, onmessage: null };
  function later(question: Question) {
    asked.push(question);
    setTimeout(() => worker.onmessage!({ data: answerTo(question, known) } as never));
  }
  const feed = new PlanFeed(worker, (answer) =>
    answer.which === 'practice' ? practice.arrived() : bench.arrived(answer),
  );
  const bench: Bench = new Bench({ name, text: sample(name), version: '', beside: {} }, feed);
  const practice: Practice = new Practice(bench, feed);
  practice.begin();
  return { bench, asked };
}

test('nothing of what is practised is seen, and the job stays as it is', async () => {
  const { bench, asked } = benchWith('mere-prone.yaml');
  await vi.advanceTimersToNextTimerAsync();
  const before = bench.now;
  await vi.runAllTimersAsync();
  const { shown, ...now } = bench.now;
  expect({ ...now, shown }).toEqual(before);
  expect(shown!.result).toEqual(resultOf(planOf(jobOf(sample('mere-prone.yaml')))));
  const practised = asked.filter(({ which }) => which === 'practice');
  expect(practised.length).toBeGreaterThanOrEqual(50);
  expect(new Set(practised.map(({ written }) => written.text)).size).toBeGreaterThan(10);
  for (const { written } of practised) expect(jobOf(written.text).name).toBe(jobOf(sample('mere-prone.yaml')).name);
});

test('a change that somebody makes goes before, is planned as if nothing had been practised, and ends it', async () => {
  const { bench, asked } = benchWith('mere-prone.yaml');
  await vi.advanceTimersByTimeAsync(302);
  const text = withValue(bench.now.history.text, ['chambers', 'web'], '31');
  const before = asked.length;
  expect(before).toBeGreaterThan(2);
  bench.change(() => text);
  await vi.runAllTimersAsync();
  expect(asked.slice(before).map(({ which, written }) => [which, written.text])).toEqual([['this', text]]);
  expect(bench.now.isCurrent).toBe(true);
  expect(bench.now.shown!.result).toEqual(resultOf(planOf(jobOf(text))));
});
