import { describe, expect, test } from 'vitest';
import { PATCHES } from '../../src/board/mesh.js';
import type { Point } from '../../src/contour/point.js';
import { sectionAt } from '../../src/view/section.js';
import { wallsInPlane } from '../../src/view/wallsInPlane.js';
import { planOfSample, SAMPLES } from '../sheet/sample.js';

describe('the walls in a cross-section', () => {
  // A box board, 300 mm wide and 60 thick, counter-clockwise as seen from the tail.
  const loop = {
    points: [
      [-150, 0],
      [150, 0],
      [150, 60],
      [-150, 60],
    ],
    patches: ['bottom', 'rail', 'deck', 'rail'],
  } as const;
  const chamber: Point[] = [
    [40, 12],
    [120, 12],
    [120, 45],
    [40, 45],
  ];

  test('of a box in a box are what is left beside it', () => {
    const walls = wallsInPlane([loop], chamber, PATCHES);
    expect(walls.bottom!.distance).toBe(12);
    expect(walls.deck!.distance).toBe(15);
    expect(walls.rail!.distance).toBe(30);
    expect(walls.rail).toMatchObject({ from: [120, expect.any(Number)], to: [150, expect.any(Number)] });
  });

  test('are those of the patches that were asked for, and that the cut has', () => {
    expect(Object.keys(wallsInPlane([loop], chamber, ['deck', 'bottom']))).toEqual(['deck', 'bottom']);
    const bare = { points: loop.points, patches: ['bottom', 'bottom', 'bottom', 'bottom'] } as const;
    expect(Object.keys(wallsInPlane([bare], chamber, PATCHES))).toEqual(['bottom']);
  });

  // Brute force: every point of the chamber's outline against every point of the surface, each 0.25 mm apart.
  test.each(SAMPLES)('of %s are those between points laid closely along both lines', (name) => {
    const STEP = 0.25;
    const plan = planOfSample(name);
    const { loops, chambers } = sectionAt(plan, plan.board.length / 2);
    const along = (a: Point, b: Point): Point[] => {
      const steps = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / STEP));
      return Array.from({ length: steps + 1 }, (_, i) => [
        a[0] + ((b[0] - a[0]) * i) / steps,
        a[1] + ((b[1] - a[1]) * i) / steps,
      ]);
    };
    expect(chambers.length).toBeGreaterThan(0);
    for (const { corners } of chambers.slice(0, 3)) {
      const walls = wallsInPlane(loops, corners, PATCHES);
      const inside = corners.flatMap((corner, i) => along(corner, corners[(i + 1) % corners.length]!));
      for (const patch of PATCHES) {
        const surface = loops.flatMap(({ points, patches }) =>
          points.flatMap((point, i) => (patches[i] === patch ? along(point, points[(i + 1) % points.length]!) : [])),
        );
        let least = Infinity;
        for (const [y, z] of inside) for (const [v, w] of surface) least = Math.min(least, Math.hypot(y - v, z - w));
        // Points half a step beside the nearest ones are farther off by less than that.
        expect(walls[patch]!.distance).toBeLessThanOrEqual(least + 1e-9);
        expect(walls[patch]!.distance).toBeGreaterThan(least - STEP);
      }
    }
  });
});
