import { curveMonotoneX } from 'd3-shape';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { monotone } from '../../src/board/monotone.js';

const ROUNDING = 1e-9;

/** Values at rising places, drawn at random. */
const values = fc
  .array(
    fc.record({
      step: fc.double({ min: 0.01, max: 10, noNaN: true }),
      y: fc.double({ min: -50, max: 50, noNaN: true }),
    }),
    {
      minLength: 2,
      maxLength: 12,
    },
  )
  .map((points) => {
    let x = 0;
    return points.map(({ step, y }) => ({ x: (x += step), y }));
  });

describe('a monotone cubic', () => {
  test('hits every measured value and never passes the two values it lies between', () => {
    fc.assert(
      fc.property(values, fc.double({ min: 0, max: 1, noNaN: true }), (points, share) => {
        const curve = monotone(
          points.map((p) => p.x),
          points.map((p) => p.y),
        );
        points.forEach((p) => expect(Math.abs(curve(p.x) - p.y)).toBeLessThan(ROUNDING));
        for (let i = 1; i < points.length; i++) {
          const [a, b] = [points[i - 1]!, points[i]!];
          const y = curve(a.x + share * (b.x - a.x));
          expect(y).toBeGreaterThanOrEqual(Math.min(a.y, b.y) - ROUNDING);
          expect(y).toBeLessThanOrEqual(Math.max(a.y, b.y) + ROUNDING);
        }
      }),
      { seed: 1990 },
    );
  });

  // d3-shape's curveMonotoneX is an independent implementation of Steffen (1990); at the ends it takes another slope.
  test('is the curve that d3-shape draws by the same paper, away from the ends', () => {
    const points = [0, 1.3, 2, 4, 4.5, 7, 8, 10].map((x, i) => ({ x, y: [3, 4, 4.2, 9, 8, 2, 2, 5][i]! }));
    const pieces: number[][] = [];
    let pen = [0, 0];
    const context = {
      moveTo: (x: number, y: number) => (pen = [x, y]),
      lineTo: (x: number, y: number) => (pen = [x, y]),
      bezierCurveTo: (x1: number, y1: number, x2: number, y2: number, x: number, y: number) => {
        pieces.push([...pen, x1, y1, x2, y2, x, y]);
        pen = [x, y];
      },
    };
    const line = curveMonotoneX(context as unknown as CanvasRenderingContext2D);
    line.lineStart();
    points.forEach((p) => line.point(p.x, p.y));
    line.lineEnd();
    expect(pieces).toHaveLength(points.length - 1);
    const curve = monotone(
      points.map((p) => p.x),
      points.map((p) => p.y),
    );
    for (const [x0, y0, , y1, , y2, x3, y3] of pieces.slice(1, -1) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ][]) {
      for (const t of [0.2, 0.5, 0.8]) {
        const u = 1 - t;
        const bezier = u ** 3 * y0 + 3 * u * u * t * y1 + 3 * u * t * t * y2 + t ** 3 * y3;
        expect(curve(x0 + t * (x3 - x0))).toBeCloseTo(bezier, 9);
      }
    }
  });
});
