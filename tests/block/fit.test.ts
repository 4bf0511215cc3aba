import { areaOf } from '../../src/contour/area.js';
import { easeCorners } from '../../src/contour/ease.js';
import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { fitted } from '../../src/block/fit.js';
import type { Vertex } from '../../src/contour/vertex.js';
import { planOf } from '../../src/plan.js';
import { sampleJob } from '../samples.js';

/** Straight lines in every arc: their area is off by less than 1e-5 of the arc's. */
const FACETS = 200;

function faceted(contour: readonly Vertex[]): { x: number; y: number }[] {
  return contour.flatMap(({ x, y, bulge }, i) => {
    if (!bulge) return [{ x, y }];
    const b = contour[(i + 1) % contour.length]!;
    const sweep = 4 * Math.atan(bulge);
    const away = 1 / Math.tan(sweep / 2) / 2;
    const [cx, cy] = [(x + b.x) / 2 - away * (b.y - y), (y + b.y) / 2 + away * (b.x - x)];
    const [radius, start] = [Math.hypot(x - cx, y - cy), Math.atan2(y - cy, x - cx)];
    return Array.from({ length: FACETS }, (_, k) => {
      const angle = start + (sweep * k) / FACETS;
      return { x: cx + radius * Math.cos(angle), y: cy + radius * Math.sin(angle) };
    });
  });
}

/** Shoelace, by hand. */
const shoelace = (path: readonly { x: number; y: number }[]) =>
  Math.abs(
    path.reduce((sum, a, i) => sum + a.x * path[(i + 1) % path.length]!.y - path[(i + 1) % path.length]!.x * a.y, 0),
  ) / 2;

describe('the fit of a block', () => {
  const chambers = planOf(sampleJob('fell-short')).chambers;
  const cutterRadius = 5;

  // Reference: offset of the polygon by clipper2-ts, a general library for polygons.
  test.each([-3, -1, -0.4, 0.8, 2, 6])(
    'of %s mm moves every chamber’s contour as an independent library does',
    (fit) => {
      expect(chambers.length).toBeGreaterThan(10);
      for (const { id, contour } of chambers) {
        const made = areaOf(fitted(contour, { fit, corners: 'eased', cutterRadius }));
        const paths = inflatePathsD([faceted(contour)], fit, JoinType.Round, EndType.Polygon, 2, 6, 0.001);
        const reference = paths.reduce((sum, path) => sum + shoelace(path), 0);
        // Where the contour turns by less than the cutter eases, a mitre stands for an arc: far less than a thousandth
        // of the block.
        expect(Math.abs(made - reference) / reference, `${id} ${made} ${reference}`).toBeLessThan(3e-4);
      }
    },
  );

  test('square corners are those of the rectangle the eased one was drawn from', () => {
    const eased = easeCorners(
      [
        [0, 0],
        [100, 0],
        [100, 40],
        [0, 40],
      ],
      6,
    )!.contour;
    const square = fitted(eased, { fit: -1, corners: 'square', cutterRadius: 6 });
    // (100 − 2) × (40 − 2)
    expect(areaOf(square)).toBeCloseTo(98 * 38, 9);
    // Eased: 98 × 38 less (4 − π) r² with the radius 5 that a parallel curve has 1 mm inside one of 6.
    expect(areaOf(fitted(eased, { fit: -1, corners: 'eased', cutterRadius: 6 }))).toBeCloseTo(
      98 * 38 - (4 - Math.PI) * 25,
      9,
    );
  });

  test('a clearance wider than the corner’s radius leaves sharp corners, as a parallel curve does', () => {
    const eased = easeCorners(
      [
        [0, 0],
        [100, 0],
        [100, 40],
        [0, 40],
      ],
      2,
    )!.contour;
    expect(areaOf(fitted(eased, { fit: -3, corners: 'eased', cutterRadius: 2 }))).toBeCloseTo(94 * 34, 9);
  });

  test('no fit leaves the chamber’s contour as it is', () => {
    const { contour } = chambers[0]!;
    expect(fitted(contour, { fit: 0, corners: 'eased', cutterRadius })).toBe(contour);
  });

  test('a clearance that leaves nothing is our mistake, and said', () => {
    const small = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 4 },
      { x: 0, y: 4 },
    ];
    expect(() => fitted(small, { fit: -2, corners: 'square', cutterRadius: 1 })).toThrow('leaves nothing');
  });
});
