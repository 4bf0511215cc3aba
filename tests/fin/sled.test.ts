import { describe, expect, test } from 'vitest';
import type { FinSpec } from '../../src/job/spec/finish.js';
import { blankSize } from '../../src/fin/blank.js';
import { blankThickness } from '../../src/fin/layers.js';
import { sledOf, taperedTo } from '../../src/fin/sled.js';
import { kernel } from '../oracle/kernel.js';
import { builtFin } from './fins.js';

const k = await kernel();
const DEGREES = 180 / Math.PI;
/** How the bench reads a height, mm: a caliper's hundredth, or a thousandth of an inch. */
const MARKS = { mm: 0.01, in: 0.0254 };

type Solid = InstanceType<typeof k.Manifold>;

/**
 * Sends a blank over the sled as it is built: laid with its lower face on the two edges of the blocks, everything over
 * the drum cut away. `y` along the blank from the base line, `z` up; the blank's middle plane is z = 0 before.
 */
function sanded(blank: Solid, low: number, high: number, opening: number, depth: number): Solid {
  // Where the lower face is over the base line and the tip line.
  const under = (y: number) =>
    blank.intersect(k.Manifold.cube([400, 0.02, 400], true).translate([0, y, 0])).boundingBox().min[2];
  const [base, tip] = [under(0), under(depth)];
  const lies = Math.atan2(tip - base, depth);
  const tilt = Math.asin((high - low) / Math.hypot(depth, tip - base));
  const turned = blank.translate([0, 0, -base]).rotate([(tilt - lies) * DEGREES, 0, 0]);
  const cut = turned
    .translate([0, 0, low])
    .intersect(k.Manifold.cube([1000, 2000, opening + 500]).translate([-500, -1000, -500]));
  // Back to where it lay.
  return cut
    .translate([0, 0, -low])
    .rotate([(lies - tilt) * DEGREES, 0, 0])
    .translate([0, 0, base]);
}

const thicknessAt = (solid: Solid, y: number): number => {
  const { min, max } = solid.intersect(k.Manifold.cube([400, 0.02, 400], true).translate([0, y, 0])).boundingBox();
  return max[2] - min[2];
};

const turnedOver = (solid: Solid) => solid.rotate([0, 180, 0]);

function blankOf(fin: FinSpec): Solid {
  const { length, below } = blankSize(fin);
  const thick = blankThickness(fin);
  return k.Manifold.cube([50, length, thick]).translate([-25, -below, -thick / 2]);
}

describe('the taper sled', () => {
  const fins: [string, FinSpec][] = [
    ['long', builtFin()],
    ['short and steep', builtFin({ base: 120, tip: 40, depth: 110, thickness: 14, tipThickness: 3 })],
    ['held by a tab', builtFin({}, { tab: { depth: 30, isTemporary: true } })],
    ['hardly tapered', builtFin({ thickness: 20, tipThickness: 17 })],
  ];
  test.each(fins)('brings the blank of a %s fin to its thickness at base and tip, side by side', (_, fin) => {
    const sled = sledOf(fin);
    const end = taperedTo(fin);
    for (const mark of Object.values(MARKS)) {
      const read = (mm: number) => Math.round(mm / mark) * mark;
      let blank = blankOf(fin);
      for (const side of sled.sides) {
        blank = sanded(blank, read(sled.low), read(side.high), read(side.opening), fin.depth);
        expect(Math.abs(thicknessAt(blank, 0) - side.base)).toBeLessThan(0.05);
        expect(Math.abs(thicknessAt(blank, fin.depth) - side.tip)).toBeLessThan(0.05);
        blank = turnedOver(blank);
      }
      expect(Math.abs(thicknessAt(blank, 0) - end.base)).toBeLessThan(0.05);
      expect(Math.abs(thicknessAt(blank, fin.depth) - end.tip)).toBeLessThan(0.05);
      // The middle stays the middle: as much stands on either side of it.
      for (const y of [0, fin.depth]) {
        const { min, max } = blank
          .intersect(k.Manifold.cube([400, 0.02, 400], true).translate([0, y, 0]))
          .boundingBox();
        expect(Math.abs(min[2] + max[2])).toBeLessThan(0.1);
      }
    }
  });

  test('tapers a flat fin on its foiled side alone', () => {
    const fin = builtFin({ thickness: 11, tipThickness: 4 }, { section: 'flatOutside' });
    const { low, sides } = sledOf(fin);
    expect(sides).toHaveLength(1);
    const blank = sanded(blankOf(fin), low, sides[0]!.high, sides[0]!.opening, fin.depth);
    expect(Math.abs(thicknessAt(blank, 0) - 11.5)).toBeLessThan(0.05);
    expect(Math.abs(thicknessAt(blank, fin.depth) - 4.5)).toBeLessThan(0.05);
    expect(blank.boundingBox().min[2]).toBeCloseTo(-blankThickness(fin) / 2, 3);
  });

  test('raises the block under the tip twice as far for the second side, which lies on the tapered one', () => {
    // A wedge: half of the taper over the depth is the sine's tangent; sides of a right triangle, by hand.
    const fin = builtFin({ depth: 240, thickness: 20, tipThickness: 6 }, { leave: 0 });
    const { low, sides } = sledOf(fin);
    const rise = 240 * Math.sin(Math.atan(7 / 240));
    expect(sides.map(({ high }) => high - low)).toEqual([expect.closeTo(rise, 9), expect.closeTo(2 * rise, 9)]);
  });

  test('keeps the overhanging tab off the sled', () => {
    const fin = builtFin(
      { base: 120, tip: 40, depth: 60, thickness: 20, tipThickness: 2 },
      { tab: { depth: 60, isTemporary: true } },
    );
    const { low, sides } = sledOf(fin);
    const tilt = Math.asin((sides.at(-1)!.high - low) / Math.hypot(60, 9));
    expect(low - 60 * Math.sin(tilt)).toBeGreaterThan(0);
  });
});
