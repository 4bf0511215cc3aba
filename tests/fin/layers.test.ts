import { describe, expect, test } from 'vitest';
import type { FinSpec } from '../../src/job/spec/finish.js';
import { halfThickness } from '../../src/fin/foil.js';
import { layersOf, thicknessAt, volumeOf } from '../../src/fin/layers.js';
import { chordAt, outlineOf } from '../../src/fin/outline.js';
import { kernel } from '../oracle/kernel.js';
import { builtFin } from './fins.js';

const k = await kernel();

/** Slices along the depth and corners of each section that stand for the fin's solid. */
const SLICES = 60;
const CORNERS = 80;

/** The finished foil as a solid: hulls of neighbouring sections, which are convex; z square to the fin's plane. */
function solidOf(fin: FinSpec) {
  const outline = outlineOf(fin);
  const flat = fin.build!.section !== 'symmetric';
  const section = (i: number): [number, number, number][] => {
    const y = fin.depth * (1 - (1 - i / SLICES) ** 2);
    const { from, length } = chordAt(outline, y);
    const thick = thicknessAt(fin, y);
    return Array.from({ length: CORNERS + 1 }, (_, n) => (n / CORNERS) ** 2).flatMap((u) => {
      const out = thick * halfThickness(u);
      return (flat ? [0, 2 * out] : [-out, out]).map((z): [number, number, number] => [from + u * length, y, z]);
    });
  };
  return k.Manifold.union(
    Array.from({ length: SLICES }, (_, i) => k.Manifold.hull([...section(i), ...section(i + 1)])),
  );
}

describe('the layers of a built fin', () => {
  test.each<[string, FinSpec]>([
    ['symmetric', builtFin()],
    ['flat inside', builtFin({}, { section: 'flatInside' })],
    ['without a panel', builtFin({ thickness: 12 }, { panel: undefined })],
  ])('of a %s one have the volumes of its solid cut in manifold-3d', (_, fin) => {
    const solid = solidOf(fin);
    const outline = outlineOf(fin);
    const both = fin.build!.section === 'symmetric';
    for (const layer of layersOf(fin)) {
      const slab = (from: number, to: number) =>
        k.Manifold.cube([2000, 2000, to - from]).translate([-1000, -1000, from]);
      const within = solid.intersect(slab(layer.from, layer.to)).volume();
      const mirrored = both ? solid.intersect(slab(-layer.to, -layer.from)).volume() : 0;
      expect(volumeOf(fin, outline, layer)).toBeGreaterThan(0);
      expect(Math.abs(volumeOf(fin, outline, layer) / (within + mirrored) - 1)).toBeLessThan(0.004);
    }
  });

  test('fill a slab of even chord and thickness as the integral of the published form says', () => {
    // ∫ over the chord of 2 · 5 (0.2969 √x − 0.126 x − 0.3516 x² + 0.2843 x³ − 0.1015 x⁴) = 0.685083, by hand.
    const fin = builtFin(
      { base: 100, tip: 100, depth: 100, thickness: 10, tipThickness: 10 },
      { outline: { rake: 0, leading: 0.5, trailing: 0.5 } },
    );
    const all = layersOf(fin).reduce((sum, layer) => sum + volumeOf(fin, outlineOf(fin), layer), 0);
    expect(all / (100 * 100 * 10)).toBeCloseTo(0.685083, 4);
  });
});
