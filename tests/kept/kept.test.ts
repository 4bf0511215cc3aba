import { expect, test } from 'vitest';
import { Kept } from '../../src/kept/kept.js';

test('a thing is made once for each owner and key, and the ones not asked for the longest are let go', () => {
  const kept = new Kept<object, string>(2);
  const [one, other] = [{}, {}];
  let made = 0;
  const ask = (owner: object, key: string) => kept.of(owner, key, () => `${key}${++made}`);
  expect([ask(one, 'a'), ask(one, 'a'), ask(other, 'a')]).toEqual(['a1', 'a1', 'a2']);
  expect([ask(one, 'b'), ask(one, 'a'), ask(one, 'c')]).toEqual(['b3', 'a1', 'c4']);
  expect([ask(one, 'a'), ask(one, 'b')]).toEqual(['a1', 'b5']);
});
