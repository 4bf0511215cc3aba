import { expect, test } from 'vitest';
import type { Question, Shown } from '../../../src/bench/plan/answer.js';
import { PlanFeed, type Arrived, type Worked } from '../../../src/bench/plan/feed.js';

/** A worker that answers when it is told to. */
function slowWorker() {
  const asked: Question[] = [];
  const worker: Worked = { postMessage: (question) => void asked.push(question), onmessage: null, onerror: null };
  const answer = (shown?: Partial<Shown>, took = 1) => {
    const { number, which } = asked.at(-1)!;
    worker.onmessage!({ data: { number, which, findings: [], took, shown } } as never);
  };
  return { worker, asked, answer };
}
const written = (text: string) => ({ name: 'a.yaml', text, beside: {} });

test('of what is asked while the worker is busy only the latest is computed', () => {
  const { worker, asked, answer } = slowWorker();
  const arrived: Arrived[] = [];
  const feed = new PlanFeed(worker, (each) => arrived.push(each));
  for (const text of ['a', 'b', 'c', 'd']) feed.ask('this', written(text));
  answer();
  answer();
  expect(asked.map(({ written: { text } }) => text)).toEqual(['a', 'd']);
  expect(arrived.map(({ number }) => number)).toEqual([1, 4]);
});

test('the job on the bench goes before the one it is compared with, and neither is lost', () => {
  const { worker, asked, answer } = slowWorker();
  const feed = new PlanFeed(worker, () => undefined);
  feed.ask('this', written('a'));
  feed.ask('other', written('x'));
  feed.ask('this', written('b'));
  answer();
  answer();
  expect(asked.map(({ which, written: { text } }) => which + text)).toEqual(['thisa', 'thisb', 'otherx']);
});

test('a board that has not changed comes once and is kept', () => {
  const { worker, answer } = slowWorker();
  const arrived: Arrived[] = [];
  const feed = new PlanFeed(worker, (each) => arrived.push(each));
  const board = { outline: { length: 3 } } as Shown['board'];
  feed.ask('this', written('a'));
  answer({ board });
  feed.ask('this', written('b'));
  answer({});
  expect(arrived.map(({ shown }) => shown?.board)).toEqual([board, board]);
});

test('a plan is made ahead while there is nothing else to do, and the planner is quick', () => {
  const { worker, asked, answer } = slowWorker();
  const feed = new PlanFeed(worker, () => undefined);
  const ahead = () => {
    const before = asked.length;
    feed.ahead(written('next'));
    return asked.slice(before).map(({ which }) => which);
  };
  expect(ahead()).toEqual([]);
  feed.ask('this', written('a'));
  expect(ahead()).toEqual([]);
  answer();
  expect(ahead()).toEqual(['ahead']);
  feed.ask('this', written('b'));
  answer({}, 200);
  expect(ahead()).toEqual([]);
});

test('a worker that fails says so and goes on with the next', () => {
  const { worker, asked } = slowWorker();
  const failures: string[] = [];
  const feed = new PlanFeed(
    worker,
    () => undefined,
    (why) => failures.push(why),
  );
  feed.ask('this', written('a'));
  feed.ask('this', written('b'));
  worker.onerror!({ message: 'out of memory' } as ErrorEvent);
  expect(failures).toEqual(['out of memory']);
  expect(asked.at(-1)!.written.text).toBe('b');
});
