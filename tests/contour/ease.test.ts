import { areaOf } from '../../src/contour/area.js';
import { easeCorners } from '../../src/contour/ease.js';
import { area as clipperArea, inflatePathsD, type PathsD, JoinType, EndType } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';

const rectangle = (length: number, width: number) =>
  [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ] as const;

const perimeter = (contour: readonly { x: number; y: number; bulge?: number }[]) =>
  contour.reduce((sum, a, i) => {
    const b = contour[(i + 1) % contour.length]!;
    const chord = Math.hypot(b.x - a.x, b.y - a.y);
    const angle = 4 * Math.atan(a.bulge ?? 0);
    return sum + (angle === 0 ? chord : (chord * angle) / (2 * Math.sin(angle / 2)));
  }, 0);

describe('corners eased to the cutter', () => {
  // Plane geometry, exact: rounded rectangle l w − (4 − π) r² and 2(l + w) − 8r + 2πr; 200 × 60, r 10: 11914.1593 mm²,
  // 502.8319 mm.
  test('the rounded rectangle has the area and the perimeter of its closed form', () => {
    const { contour } = easeCorners(rectangle(200, 60), 10)!;
    expect(areaOf(contour)).toBeCloseTo(11914.1593, 4);
    expect(perimeter(contour)).toBeCloseTo(502.8319, 4);
  });

  // Plane geometry, exact: obround slot w(l − w) + π w²/4; 100 × 20: 1914.1593.
  test('a slot as wide as the cutter is an obround', () => {
    expect(areaOf(easeCorners(rectangle(100, 20), 10)!.contour)).toBeCloseTo(1914.1593, 4);
  });

  // Plane geometry, exact: inset of the above by 5 is A − P d + π d² = 9478.5398; offset here by an independent library
  // (clipper2-ts).
  test('inset by 5 mm it is the rectangle of 190 × 50 with corners of 5 mm', () => {
    const { contour } = easeCorners(rectangle(200, 60), 10)!;
    const fine: PathsD = [
      contour.flatMap((a, i) => {
        const b = contour[(i + 1) % contour.length]!;
        if (!a.bulge) return [{ x: a.x, y: a.y }];
        const angle = 4 * Math.atan(a.bulge);
        const radius = Math.hypot(b.x - a.x, b.y - a.y) / 2 / Math.sin(angle / 2);
        const start = Math.atan2(b.y - a.y, b.x - a.x) - angle / 2 - Math.PI / 2;
        const [cx, cy] = [a.x - radius * Math.cos(start), a.y - radius * Math.sin(start)];
        return Array.from({ length: 200 }, (_, k) => ({
          x: cx + radius * Math.cos(start + (angle * k) / 200),
          y: cy + radius * Math.sin(start + (angle * k) / 200),
        }));
      }),
    ];
    const inset = inflatePathsD(fine, -5, JoinType.Round, EndType.Polygon, 2, 4);
    expect(Math.abs(clipperArea(inset[0] as never))).toBeCloseTo(9478.5398, 0);
  });

  test('a pocket narrower than the cutter is refused', () => {
    expect(easeCorners(rectangle(200, 19.9), 10)).toBeUndefined();
  });

  test('the straight-lined profile holds the contour wholly inside', () => {
    const { contour, profile } = easeCorners(
      [
        [0, 0],
        [150, -6],
        [160, 70],
        [10, 60],
      ],
      8,
    )!;
    const straight = profile.reduce((sum, [x, y], i) => {
      const [x2, y2] = profile[(i + 1) % profile.length]!;
      return sum + (x * y2 - x2 * y) / 2;
    }, 0);
    expect(straight).toBeGreaterThan(areaOf(contour));
    // Four facets a corner stand off the arc by no more than r (1/cos 11.25° − 1).
    expect(straight - areaOf(contour)).toBeLessThan(2 * Math.PI * 8 * 8 * (1 / Math.cos((11.25 * Math.PI) / 180) - 1));
  });
});
