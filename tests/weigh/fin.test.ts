import { expect, test } from 'vitest';
import type { FinSpec } from '../../src/job/spec/finish.js';
import { finVolume } from '../../src/weigh/fin.js';
import { kernel } from '../oracle/kernel.js';

const k = await kernel();

/** Straight lines that stand for each parabolic arc. */
const FACETS = 200;

test.each<[string, FinSpec]>([
  ['thick-based', fin(254, 114, 241, 22, 6)],
  ['thin', fin(110, 30, 115, 8, 2)],
  ['slab-sided', fin(100, 100, 100, 10, 10)],
])('a %s fin has the volume of its solid in manifold-3d', (_, each) => {
  const side = (sign: 1 | -1) =>
    Array.from({ length: FACETS }, (_, i): [number, number] => {
      const u = sign * (1 - (2 * i) / FACETS);
      return [(u * each.base) / 2, (sign * (1 - u * u) * each.thickness) / 2];
    });
  const section = new k.CrossSection([[...side(1), ...side(-1)]]);
  // Extruded to a scaled copy of itself: chord and thickness each run straight.
  const solid = section.extrude(each.depth, 100, 0, [each.tip / each.base, each.tipThickness / each.thickness]);
  expect(finVolume(each)).toBeGreaterThan(0);
  expect(finVolume(each) / (solid.volume() / 1e6)).toBeCloseTo(1, 3);
});

function fin(base: number, tip: number, depth: number, thickness: number, tipThickness: number): FinSpec {
  return { name: 'fin', x: 0, base, tip, depth, thickness, tipThickness, density: 1750 };
}
