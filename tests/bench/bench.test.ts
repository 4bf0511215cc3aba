import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Bench, PATIENCE } from '../../src/bench/state/bench.js';
import { answerTo } from '../../src/bench/plan/answer.js';
import { sample } from './read.js';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A bench whose planner answers when it is told to, and what it has told the page. */
function benchOf(name: string) {
  let question = 0;
  const written = { name, text: sample(name), beside: {}, version: '' };
  const ahead: string[] = [];
  const bench = new Bench(written, { ask: () => ++question, ahead: ({ text }) => void ahead.push(text) });
  const answer = () => {
    const { shown, ...rest } = answerTo({ number: question, which: 'this', written }, {});
    bench.arrived({ ...rest, shown: { ...shown!, board: shown!.board! } });
  };
  answer();
  const told: boolean[] = [];
  bench.subscribe(() => told.push(bench.now.isCurrent));
  return { bench, answer, told, ahead };
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

test('the change that will probably follow is asked ahead once the picture is drawn, and only while it is still the next one', async () => {
  const { bench, answer, ahead } = benchOf('mere-prone.yaml');
  let drawn: (() => void)[] = [];
  vi.stubGlobal('requestAnimationFrame', (draw: () => void) => void drawn.push(draw));
  vi.stubGlobal('MessageChannel', function () {
    const port1 = { onmessage: () => undefined };
    return { port1, port2: { postMessage: () => port1.onmessage() } };
  });
  const draw = () => {
    const now = drawn;
    drawn = [];
    now.forEach((each) => each());
  };
  const step = (by: number) =>
    bench.change(
      (text) => `${text}# ${by}\n`,
      'slider',
      (text) => `${text}# then\n`,
    );
  step(1);
  answer();
  expect(ahead).toEqual([]);
  draw();
  expect(ahead).toEqual([`${bench.now.history.text}# then\n`]);
  step(2);
  step(3);
  answer();
  draw();
  expect(ahead).toHaveLength(2);
  step(4);
  answer();
  step(5);
  draw();
  expect(ahead).toHaveLength(2);
  answer();
  draw();
  expect(ahead).toHaveLength(3);
  bench.undo();
  answer();
  draw();
  expect(ahead).toHaveLength(3);
});
