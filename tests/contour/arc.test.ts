import { expect, test } from 'vitest';
import { arcBetween, chordsFor } from '../../src/contour/arc.js';
import { pathPoints } from '../../src/contour/chords.js';

// The bulge is the tangent of a quarter of the arc's angle (Autodesk, "DXF Reference", group code 42 of LWPOLYLINE).
test('a bulge of 1 is half a circle to the left of the way, of −1 to the right, of tan 22.5° a quarter', () => {
  const [a, b] = [
    { x: 0, y: 0 },
    { x: 20, y: 0 },
  ];
  const left = arcBetween({ ...a, bulge: 1 }, b)!;
  expect([left.cx, left.cy, left.radius, left.sweep]).toEqual([10, 0, 10, Math.PI].map((v) => expect.closeTo(v, 9)));
  const right = arcBetween({ ...a, bulge: -1 }, b)!;
  expect(right.sweep).toBeCloseTo(-Math.PI, 9);
  const quarter = arcBetween({ x: 10, y: 0, bulge: Math.tan(Math.PI / 8) }, { x: 0, y: 10 })!;
  expect([quarter.cx, quarter.cy, quarter.radius]).toEqual([0, 0, 10].map((v) => expect.closeTo(v, 9)));
  expect(quarter.sweep).toBeCloseTo(Math.PI / 2, 9);
});

test('a straight way, or none at all, is no arc', () => {
  expect(arcBetween({ x: 0, y: 0 }, { x: 5, y: 0 })).toBeUndefined();
  expect(arcBetween({ x: 5, y: 5, bulge: 1 }, { x: 5, y: 5 })).toBeUndefined();
});

// Sagitta of a chord: r (1 − cos(θ/2)) (any handbook of mathematics).
test('chords stay within their tolerance of the arc, and one chord fewer would not', () => {
  const sagitta = (radius: number, sweep: number, count: number) => radius * (1 - Math.cos(sweep / count / 2));
  for (const radius of [0.5, 6.35, 12.7, 400])
    for (const sweep of [0.2, Math.PI / 2, 2 * Math.PI, -3])
      for (const tolerance of [0.001, 0.02]) {
        const count = chordsFor(radius, sweep, tolerance);
        expect(sagitta(radius, Math.abs(sweep), count)).toBeLessThanOrEqual(tolerance + 1e-12);
        if (count > 1) expect(sagitta(radius, Math.abs(sweep), count - 1)).toBeGreaterThan(tolerance);
      }
});

test('the points along a slot lie on its straights and its two half circles, and come back to the first', () => {
  const slot = [
    { x: 0, y: 0 },
    { x: 60, y: 0, bulge: 1 },
    { x: 60, y: 20 },
    { x: 0, y: 20, bulge: 1 },
  ];
  const points = pathPoints(slot, true, 0.05);
  expect([...points.slice(0, 2)]).toEqual([...points.slice(-2)]);
  for (let i = 0; i < points.length; i += 2) {
    const [x, y] = [points[i]!, points[i + 1]!];
    // Everything a slot passes is its half width from the segment between the two centres.
    const off = Math.hypot(x - Math.min(60, Math.max(0, x)), y - 10);
    expect(off).toBeCloseTo(10, 9);
  }
  expect(pathPoints(slot.slice(0, 2), false)).toHaveLength(4);
  expect(pathPoints([], true)).toHaveLength(0);
});
