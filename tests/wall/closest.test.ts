import fc from 'fast-check';
import { Vector3 } from 'three';
import { ExtendedTriangle } from 'three-mesh-bvh';
import { describe, expect, test } from 'vitest';
import {
  cornersToTriangle,
  crossTriangle,
  edgesToTriangle,
  FLAT,
  setNormal,
  setSides,
} from '../../src/wall/closest.js';
import { evenly } from '../evenly.js';

const SEED = 20261127;
type Triple = readonly [number, number, number];

const cross = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const plus = (a: Triple, b: Triple): Triple => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

/** A rectangle in space and a triangle: what is found of them, and what lies where. */
function found(corner: Triple, first: Triple, second: Triple, triangle: readonly [Triple, Triple, Triple]) {
  const normal = cross(first, second);
  const size = Math.hypot(...normal);
  // Written behind another, so that the place of each figure counts.
  const flats = new Float64Array(2 * FLAT);
  setSides(flats, FLAT, ...corner, ...first, ...second);
  setNormal(flats, FLAT, normal[0] / size, normal[1] / size, normal[2] / size);
  const at = Float64Array.from(triangle.flat());
  const result = Float64Array.from([Infinity, 0, 0, 0, 0, 0, 0]);
  cornersToTriangle(flats, FLAT, at, result);
  edgesToTriangle(flats, FLAT, at, result);
  crossTriangle(flats, FLAT, at, result);
  return { distance: Math.sqrt(result[0]!), on: [...result.slice(1, 4)], to: [...result.slice(4, 7)] };
}

const vector = (range: number) => {
  const axis = evenly(-range, range);
  return fc.tuple(axis, axis, axis) as fc.Arbitrary<Triple>;
};
/** A rectangle: its second side square to its first. */
const rectangles = fc
  .tuple(vector(50), vector(60), vector(60))
  .map(([corner, first, other]) => {
    const turned = cross(first, other);
    const scale = 40 / (Math.hypot(...turned) || 1);
    const second = cross(turned.map((each) => each * scale) as unknown as Triple, first);
    const length = 30 / (Math.hypot(...second) || 1);
    return { corner, first, second: second.map((each) => each * length) as unknown as Triple };
  })
  .filter(({ first, second }) => Math.hypot(...first) > 5 && Math.hypot(...second) > 5);
const triangles = fc
  .tuple(vector(70), vector(70), vector(70))
  .filter(
    ([a, b, c]) => Math.hypot(...cross(plus(b, a.map((v) => -v) as never), plus(c, a.map((v) => -v) as never))) > 50,
  );

const asTriangle = (a: Triple, b: Triple, c: Triple) =>
  new ExtendedTriangle(new Vector3(...a), new Vector3(...b), new Vector3(...c));

// Triangle against triangle, by three-mesh-bvh: a rectangle is two of them.
describe(`a side of a chamber and a triangle of the surface (seed ${SEED})`, () => {
  test('are as far apart as two triangles and a triangle are, and where is told', () => {
    let [apart, through] = [0, 0];
    fc.assert(
      fc.property(rectangles, triangles, ({ corner, first, second }, triangle) => {
        const [b, c] = [plus(corner, first), plus(corner, second)];
        const opposite = plus(b, second);
        const other = asTriangle(...triangle);
        const exact = Math.min(
          ...[asTriangle(corner, b, opposite), asTriangle(corner, opposite, c)].map((half) =>
            half.intersectsTriangle(other) ? 0 : half.distanceToTriangle(other),
          ),
        );
        const { distance, on, to } = found(corner, first, second, triangle);
        expect(distance).toBeCloseTo(exact, 4);
        expect(Math.hypot(on[0]! - to[0]!, on[1]! - to[1]!, on[2]! - to[2]!)).toBeCloseTo(distance, 4);
        const place = new Vector3(...(to as unknown as Triple));
        expect(other.closestPointToPoint(place, new Vector3()).distanceTo(place)).toBeLessThan(1e-4);
        const own = new Vector3(...(on as unknown as Triple));
        const off = [asTriangle(corner, b, opposite), asTriangle(corner, opposite, c)].map((half) =>
          half.closestPointToPoint(own, new Vector3()).distanceTo(own),
        );
        expect(Math.min(...off)).toBeLessThan(1e-4);
        if (exact === 0) through++;
        else apart++;
      }),
      { seed: SEED, numRuns: 1500 },
    );
    expect(Math.min(apart, through)).toBeGreaterThan(150);
  });

  // By hand, on a square of 10 mm in the plane z = 0.
  test('are square apart over its middle, and straight from its corners and edges', () => {
    const over = (triangle: readonly [Triple, Triple, Triple]) =>
      found([0, 0, 0], [10, 0, 0], [0, 10, 0], triangle).distance;
    // prettier-ignore
    const small = (x: number, y: number, z: number): [Triple, Triple, Triple] =>
      [[x, y, z], [x + 1, y, z + 1], [x, y + 1, z + 1]];
    expect(over(small(5, 5, 3))).toBeCloseTo(3, 9);
    expect(over(small(13, 14, 0))).toBeCloseTo(5, 9);
    expect(over(small(13, 5, 4))).toBeCloseTo(5, 9);
    // A large triangle over one corner of it, and one that it goes through without any corner near.
    expect(over([[-90, -90, 2], [90, -90, 2], [0, 90, 2]])).toBeCloseTo(2, 9); // prettier-ignore
    expect(over([[5, 5, -50], [5.5, 5, 50], [5, 5.5, 50]])).toBe(0); // prettier-ignore
    expect(over([[-50, 5, -1], [50, 5, -1], [0, 5, 50]])).toBe(0); // prettier-ignore
  });
});
