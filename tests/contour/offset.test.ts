import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { areaOf } from '../../src/contour/area.js';
import { easeCorners } from '../../src/contour/ease.js';
import { movedEdges } from '../../src/contour/offset.js';
import type { Point } from '../../src/contour/point.js';
import { sharpCorners } from '../../src/contour/sharp.js';
import { evenly } from '../evenly.js';

/** Corners on a circle of 50 mm: convex, counter-clockwise, no edge shorter than some millimetres. */
const convex = fc.array(evenly(0.5, 1), { minLength: 3, maxLength: 9 }).map((steps): Point[] => {
  const turn = steps.reduce((a, b) => a + b, 0);
  let angle = 0;
  return steps.map((step) => {
    angle += (2 * Math.PI * step) / turn;
    return [50 * Math.cos(angle), 50 * Math.sin(angle)];
  });
});

const areaOfPolygon = (points: readonly Point[]) => areaOf(points.map(([x, y]) => ({ x, y })));

// clipper2-ts (port of Clipper2, Angus Johnson) shares no code with it. Its miters are never cut off here: limit 100.
test('a polygon moved outward or inward has the area that an independent library gives it', () => {
  fc.assert(
    fc.property(convex, evenly(-12, 12), (corners, by) => {
      const path = corners.map(([x, y]) => ({ x, y }));
      const [moved] = inflatePathsD([path], by, JoinType.Miter, EndType.Polygon, 100, 6);
      const area = moved ? Math.abs(areaOf(moved.map(({ x, y }) => ({ x, y })))) : 0;
      if (area === 0) return;
      expect(Math.abs(areaOfPolygon(movedEdges(corners, by)) - area)).toBeLessThan(0.01);
    }),
    { seed: 18, numRuns: 300 },
  );
});

test('an edge that vanishes on the way inward is left out', () => {
  // A rectangle of 100 × 40 with a corner cut off by 6 mm: 10 mm inward its bevel is gone, 80 × 20 is left.
  const bevelled: Point[] = [
    [0, 0],
    [100, 0],
    [100, 34],
    [94, 40],
    [0, 40],
  ];
  const inner = movedEdges(bevelled, -12);
  expect(inner).toHaveLength(4);
  expect(areaOfPolygon(inner)).toBeCloseTo(76 * 16, 9);
});

test('where the way inward leaves nothing, that is an error of ours', () => {
  const square: Point[] = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ];
  expect(() => movedEdges(square, -5.1)).toThrow('leaves nothing');
});

test('the sharp corners of an eased polygon are the corners it was eased from', () => {
  fc.assert(
    fc.property(convex, (corners) => {
      const eased = easeCorners(corners, 3, 0);
      if (!eased) return;
      sharpCorners(eased.contour).forEach(([x, y], i) => {
        expect(x).toBeCloseTo(corners[i]![0], 9);
        expect(y).toBeCloseTo(corners[i]![1], 9);
      });
    }),
    { seed: 18, numRuns: 300 },
  );
});
