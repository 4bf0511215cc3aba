import { curveMonotoneX } from 'd3-shape';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hermiteWeights, monotone } from '../../src/board/monotone.js';
import { evenly } from '../evenly.js';

const ROUNDING = 1e-9;

/** Values at rising places, drawn at random. */
const values = fc
  .array(
    fc.record({
      step: evenly(0.01, 10),
      y: evenly(-50, 50),
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
      fc.property(values, evenly(0, 1), (points, share) => {
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

describe('at its ends', () => {
  const slopeAt = (curve: (x: number) => number, x: number, by: number) => (curve(x + by) - curve(x)) / by;
  const curveOf = (points: readonly (readonly [number, number])[], ends = {}) =>
    monotone(
      points.map(([x]) => x),
      points.map(([, y]) => y),
      ends,
    );

  // M. Steffen (1990), eq. 24: the end slope is that of the parabola through the three nearest values. A parabola's own
  // values, rising evenly enough that nothing is limited, therefore give it back, exact.
  test.each([[[1, 1.5, 2.25, 3, 3.6]], [[-4, -3.1, -2.5, -1.5]], [[10, 11, 12.5]], [[0.5, 0.7, 1]]])(
    'it has the slope of the parabola through the three values there, places %j',
    (xs) => {
      const parabola = (x: number) => 0.3 * x * x - 2;
      const curve = curveOf(xs.map((x) => [x, parabola(x)]));
      for (let i = 0; i < xs.length - 1; i++)
        for (const share of [0.1, 0.5, 0.8]) {
          const x = xs[i]! + share * (xs[i + 1]! - xs[i]!);
          expect(curve(x), `${x}`).toBeCloseTo(parabola(x), 9);
        }
    },
  );

  // The same paper, eq. 25–26: nothing where that slope turns round, at most twice the slope of the end's own chord.
  test.each([
    ['turns round', [[0, 0], [1, 1], [2, 5]], 0],
    ['is level', [[0, 0], [1, 0], [2, 5]], 0],
    ['is too steep', [[0, 0], [1, 1], [2, -3]], 2],
    ['falls too steeply', [[0, 0], [1, -1], [2, 3]], -2],
    ['is as it comes', [[0, 0], [1, 1], [3, 2]], 1 + (1 / 3) * 0.5],
    ['has but one chord', [[0, 1], [4, 3]], 0.5],
  ] as [string, [number, number][], number][])('its slope is limited: it %s', (_, points, slope) => {
    const [first, last] = [points[0]!, points[0]!].map(([x]) => x);
    expect(slopeAt(curveOf(points), first!, 1e-7)).toBeCloseTo(slope, 5);
    // Turned end for end it is the same.
    const turned = [...points].reverse().map(([x, y]): [number, number] => [-x, y]);
    expect(slopeAt(curveOf(turned), -last!, -1e-7)).toBeCloseTo(-slope, 5);
  }); // prettier-ignore

  test('it takes the slope that is asked, and stays where it is beyond', () => {
    const curve = curveOf([[0, 2], [3, 5], [4, 9]], { first: 0.25, last: 1.5 }); // prettier-ignore
    expect(slopeAt(curve, 0, 1e-7)).toBeCloseTo(0.25, 5);
    expect(slopeAt(curve, 4, -1e-7)).toBeCloseTo(1.5, 5);
    expect([curve(-7), curve(0), curve(4), curve(90)]).toEqual([2, 2, 9, 9]);
    expect(curveOf([[3, 8]])(-1)).toBe(8);
    expect(curveOf([[3, 8]])(12)).toBe(8);
  });

  test('it is level at a value that stands out above or below its neighbours', () => {
    const curve = curveOf([[0, 0], [1, 4], [3, 1], [4, 6]]); // prettier-ignore
    for (const x of [1, 3]) for (const by of [1e-7, -1e-7]) expect(slopeAt(curve, x, by)).toBeCloseTo(0, 5);
  });
});

// Hermite's interpolation gives back every polynomial to the third degree (any text on numerical analysis).
test.each([
  [0, 1],
  [-3, 5],
  [100, 100.01],
  [2000, 9000],
])('what ends count for between %d and %d gives back every cubic', (x0, x1) => {
  for (const power of [0, 1, 2, 3])
    for (const share of [0, 0.2, 0.5, 0.9, 1]) {
      const [f, slope] = [(x: number) => (x - x0) ** power, (x: number) => power * (x - x0) ** Math.max(0, power - 1)];
      const x = x0 + share * (x1 - x0);
      const [y0, y1, m0, m1] = hermiteWeights(x, x0, x1);
      const value = y0 * f(x0) + y1 * f(x1) + m0 * (power ? slope(x0) : 0) + m1 * (power ? slope(x1) : 0);
      expect(Math.abs(value - f(x)), `${power} ${share}`).toBeLessThan(1e-9 * Math.max(1, f(x1)));
    }
});

test('where both ends are one, the first value counts', () => {
  expect(hermiteWeights(7, 7, 7)).toEqual([1, 0, 0, 0]);
});
