import { expect, test } from 'vitest';
import { once } from '../../src/kept/once.js';

test('a step is done once for each thing, also where nothing comes of it', () => {
  let count = 0;
  const step = once((thing: { readonly size: number }) => (count++, thing.size > 1 ? thing.size : undefined));
  const [one, two] = [{ size: 1 }, { size: 2 }];
  expect([step(one), step(two), step(one), step(two)]).toEqual([undefined, 2, undefined, 2]);
  expect(count).toBe(2);
});
