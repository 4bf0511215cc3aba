import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mostValuable } from '../../../src/block/nest/knapsack.js';

/** Slow and obvious: every choice of items. */
function bestOfAll(items: readonly { size: number; value: number }[], room: number): number {
  let best = 0;
  for (let choice = 0; choice < 1 << items.length; choice++) {
    const chosen = items.filter((_, i) => (choice >> i) & 1);
    const sum = (of: 'size' | 'value') => chosen.reduce((total, item) => total + item[of], 0);
    if (sum('size') <= room) best = Math.max(best, sum('value'));
  }
  return best;
}

test('what is chosen fits and is worth as much as the best of all choices', () => {
  const item = fc.record({ size: fc.integer({ min: 1, max: 60 }), value: fc.integer({ min: 1, max: 100 }) });
  fc.assert(
    fc.property(fc.array(item, { maxLength: 9 }), fc.integer({ min: 1, max: 200 }), (items, room) => {
      const chosen = mostValuable(items, room);
      expect(new Set(chosen).size).toBe(chosen.length);
      const sum = (of: 'size' | 'value') => chosen.reduce((total, i) => total + items[i]![of], 0);
      expect(sum('size')).toBeLessThanOrEqual(room);
      expect(sum('value')).toBe(bestOfAll(items, room));
    }),
    { numRuns: 300, seed: 11 },
  );
});

test('sizes that fill the room but for what adding up rounds off fit', () => {
  const items = [0.1, 0.2, 0.3, 0.4].map((size) => ({ size, value: size }));
  expect(mostValuable(items, 1).sort()).toEqual([0, 1, 2, 3]);
  expect(mostValuable(items, 0.999)).toHaveLength(3);
  expect(mostValuable([], 5)).toEqual([]);
});

test('where fewer steps are told apart than there are sums, what is chosen fits still', () => {
  const items = Array.from({ length: 20 }, (_, i) => ({ size: 50 + ((i * 37) % 41) * 1.013, value: 1 + (i % 7) }));
  for (const steps of [8, 64]) {
    const total = mostValuable(items, 400, steps).reduce((sum, i) => sum + items[i]!.size, 0);
    expect(total).toBeGreaterThan(250);
    expect(total).toBeLessThanOrEqual(400);
  }
});
