import { describe, expect, test } from 'vitest';
import type { CutPart } from '../../../src/block/nest/cutPart.js';
import { cutSheets } from '../../../src/block/cut/cutSheets.js';
import { closestPair, pairTapered } from '../../../src/block/cut/taperPair.js';
import { layoutFaults } from '../layoutFaults.js';

const wedge = (id: string, top: number, bottom = 0): CutPart => ({
  id,
  foam: 'fill',
  length: 300,
  height: 80,
  mayTurn: false,
  taper: { top, bottom },
});

describe('tapered blocks head to tail', () => {
  // Two wedges of 80 and 50 at their ends make a rectangle of 80 + 50 = 130, the slanting cut adds kerf / cos.
  test('two equal wedges make a rectangle as high as both ends together and one slanting cut', () => {
    const slope = 30 / 300;
    const { length, height, split } = closestPair(wedge('a', 30), wedge('b', 30), 3);
    expect(length).toBe(300);
    expect(height).toBeCloseTo(130 + 3 * Math.sqrt(1 + slope * slope), 9);
    expect(split!.angle).toBeCloseTo(-Math.atan(slope), 12);
  });

  test('wedges that taper below go together with their lower edges', () => {
    expect(closestPair(wedge('a', 0, 30), wedge('b', 0, 30), 0).height).toBeCloseTo(130, 9);
  });

  // A symmetric taper of 15 on each edge: a parallelogram, 80 + 50 + the 15 by which its far corner stands out.
  test('a taper on both edges costs the lean of the outer edges', () => {
    expect(closestPair(wedge('a', 15, 15), wedge('b', 15, 15), 0).height).toBeCloseTo(80 + 50 + 15, 9);
  });

  test('blocks with parallel edges are left single, an odd wedge too', () => {
    const parts = [wedge('a', 30), wedge('b', 30), wedge('c', 30), wedge('d', 0)];
    const { pairs, singles } = pairTapered(parts, 3, () => true);
    expect(pairs).toHaveLength(1);
    expect(singles.map(({ id }) => id)).toEqual(['c', 'd']);
  });

  // Ten wedges of 80 → 50: 5 pairs of 130 + 3.01 and four saw cuts make 677; singly they would need 830.
  test('ten wedges come from a sheet that could not hold ten rectangles', () => {
    const parts = Array.from({ length: 10 }, (_, i) => wedge(`w${i}`, 30));
    const saw = { kerf: 3, trim: 0, keep: { length: 100, width: 100 } };
    const plan = cutSheets(parts, [{ id: 's', foam: 'fill', length: 300, width: 680 }], saw);
    expect(layoutFaults(plan, parts, saw)).toEqual([]);
    expect(plan.sheets).toHaveLength(1);
    expect(plan.sheets[0]!.blanks.map(({ parts: inside }) => inside.length)).toEqual([2, 2, 2, 2, 2]);
  });
});
