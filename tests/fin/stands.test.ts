import { describe, expect, test } from 'vitest';
import { standingOf } from '../../src/fin/stands.js';
import type { FinStandSpec } from '../../src/job/spec/fin.js';
import type { KeepOutSpec } from '../../src/job/job.js';
import { kernel } from '../oracle/kernel.js';
import { builtFin } from './fins.js';

const k = await kernel();
const radians = (degrees: number) => (degrees * Math.PI) / 180;
const stands = (more: Partial<FinStandSpec>): FinStandSpec => ({
  ...{ away: 0, side: 'centre', cant: 0, toe: 0 },
  ...more,
});
const fin = (more: Partial<FinStandSpec>) =>
  builtFin({ x: 2500, base: 120, thickness: 10, depth: 110 }, { stands: stands(more), outline: RAKED });
const RAKED = { rake: 40, leading: 0.7, trailing: 0.4 };

describe('a fin on the board', () => {
  test('on the centreline stands square, its tip as far behind the middle of its base as it is raked', () => {
    expect(standingOf(fin({}), [])).toEqual([{ side: 'centre', front: [2440, 0], back: [2560, 0], tip: [2540, 0] }]);
  });

  test('of a pair has its front end turned in and its tip leaning out, the other its mirror image', () => {
    const [right, left] = standingOf(fin({ side: 'both', away: 150, cant: radians(6), toe: radians(3) }), []);
    // By hand: half of the base turned by 3°, the depth leaning by 6°.
    const [along, in3] = [60 * Math.cos(radians(3)), 60 * Math.sin(radians(3))];
    expect(right!.front).toEqual([expect.closeTo(2500 - along, 9), expect.closeTo(150 - in3, 9)]);
    expect(right!.back).toEqual([expect.closeTo(2500 + along, 9), expect.closeTo(150 + in3, 9)]);
    const lean = 110 * Math.sin(radians(6));
    expect(right!.tip[0]).toBeCloseTo(2500 + 40 * Math.cos(radians(3)) - lean * Math.sin(radians(3)), 9);
    expect(right!.tip[1]).toBeCloseTo(150 + 40 * Math.sin(radians(3)) + lean * Math.cos(radians(3)), 9);
    expect(right!.side).toBe('right');
    for (const at of ['front', 'back', 'tip'] as const) expect(left![at]).toEqual([right![at][0], -right![at][1]]);
  });

  test('on the left alone stands on the left', () => {
    const [only, ...others] = standingOf(fin({ side: 'left', away: 90 }), []);
    expect(others).toEqual([]);
    expect(only!.front).toEqual([2440, -90]);
  });

  const boxes: [string, number, number, number][] = [
    ['as long and as wide as it', 124, 18, 150],
    ['as long, too narrow for its toe', 124, 11, 150],
    ['too short', 118, 40, 150],
    ['beside it', 200, 20, 130],
    ['large', 300, 100, 140],
  ];
  test.each(boxes)('is held by a keep-out %s where manifold-3d finds its base all within it', (_, length, width, y) => {
    const keepOut: KeepOutSpec = { kind: 'rectangle', name: 'box', x: 2500, y, length, width };
    const base = k.CrossSection.square([120, 10], true).rotate(3).translate([2500, 150]);
    const box = k.CrossSection.square([length, width], true).translate([2500, y]);
    const within = base.subtract(box).area() < 1e-9;
    const [standing] = standingOf(fin({ side: 'right', away: 150, toe: radians(3) }), [keepOut]);
    expect(standing!.keepOut).toBe(within ? 'box' : undefined);
  });

  test('is not held by what reaches in from the deck only', () => {
    const box = { kind: 'rectangle', name: 'box', x: 2500, y: 0, length: 300, width: 100 } as const;
    expect(standingOf(fin({}), [{ ...box, depth: { from: 'deck', deep: 20 } }])[0]!.keepOut).toBeUndefined();
    expect(standingOf(fin({}), [{ ...box, depth: { from: 'bottom', deep: 20 } }])[0]!.keepOut).toBe('box');
  });
});
