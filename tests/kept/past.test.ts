import { expect, test } from 'vitest';
import { Past } from '../../src/kept/past.js';

test('a step is done once for the very same inputs, in a plan and in those made over it, and then forgotten', () => {
  let count = 0;
  const step = (thing: { readonly size: number }, by: number) => ({ is: thing.size * by, made: ++count });
  const thing = { size: 2 };
  const first = new Past();
  const made = first.of(step, thing, 3);
  expect(made).toEqual({ is: 6, made: 1 });
  expect(first.of(step, thing, 3)).toBe(made);
  // Another number, another object of the same size, another step: each by itself.
  expect(first.of(step, thing, 4)).toEqual({ is: 8, made: 2 });
  expect(first.of(step, { size: 2 }, 3)).toEqual({ is: 6, made: 3 });
  expect(first.of((_: unknown, by: number) => by, thing, 3)).toBe(3);

  const third = new Past(new Past(first));
  expect(third.of(step, thing, 3)).toBe(made);
  const fifth = new Past(new Past(third));
  expect(fifth.of(step, thing, 3)).toBe(made);
  const eighth = new Past(new Past(new Past(fifth)));
  expect(eighth.of(step, thing, 3)).toEqual({ is: 6, made: 4 });
});

test('a step of steps is given the past it was asked of', () => {
  let count = 0;
  const inner = (by: number) => by + ++count;
  const outer = (by: number, past: Past) => past.of(inner, by) + past.of(inner, by);
  const past = new Past();
  expect(past.within(outer, 10)).toBe(22);
  expect(past.within(outer, 10)).toBe(22);
  expect(count).toBe(1);
});
