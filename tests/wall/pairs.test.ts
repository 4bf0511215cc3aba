import fc from 'fast-check';
import { Line3, Triangle, Vector3 } from 'three';
import { ExtendedTriangle } from 'three-mesh-bvh';
import { describe, expect, test } from 'vitest';
import type { Mesh } from '../../src/board/mesh.js';
import type { Point } from '../../src/contour/point.js';
import type { Face } from '../../src/layup/layup.js';
import {
  cornersToTriangle,
  crossTriangle,
  edgesToTriangle,
  FLAT,
  noFound,
  pointToFlat,
  pointToTriangle,
  setNormal,
  setSides,
} from '../../src/wall/closest.js';
import { patchTreesOf } from '../../src/wall/patchTree.js';
import { solidOf } from '../../src/wall/solid.js';
import { distanceTo, thinnest } from '../../src/wall/thinnest.js';

const SEED = 20261201;
type Triple = [number, number, number];
const vector = (v: readonly number[]) => new Vector3(v[0], v[1], v[2]);

/** Whole numbers, so that many lie on an edge, in a line or in one place. */
const whole = fc.integer({ min: -4, max: 4 });
const anywhere = fc.integer({ min: -50_000, max: 50_000 }).map((each) => each / 10_000);
const triple = (axis: fc.Arbitrary<number>) => fc.tuple(axis, axis, axis) as fc.Arbitrary<Triple>;
const point = fc.oneof(triple(whole), triple(anywhere));

function flatBy(corner: Triple, first: Triple, second: Triple): Float64Array {
  const flats = new Float64Array(2 * FLAT);
  setSides(flats, FLAT, ...corner, ...first, ...second);
  const normal = vector(first).cross(vector(second)).normalize();
  setNormal(flats, FLAT, normal.x, normal.y, normal.z);
  return flats;
}
/** Rectangles along the axes, also ones that are a line or a point. */
const flats = fc
  .tuple(triple(whole), fc.integer({ min: 0, max: 5 }), fc.integer({ min: -5, max: 5 }), fc.constantFrom(0, 1, 2))
  .map(([corner, a, b, axis]) => {
    const along = (k: number, length: number): Triple => [0, 1, 2].map((i) => (i === k % 3 ? length : 0)) as Triple;
    return { corner, first: along(axis, a), second: along(axis + 1, b) };
  });

test(`a point and a triangle are as near as three.js finds them (seed ${SEED})`, () => {
  fc.assert(
    fc.property(point, point, point, point, (p, a, b, c) => {
      const area =
        vector(b)
          .sub(vector(a))
          .cross(vector(c).sub(vector(a)))
          .length() / 2;
      // Of a triangle that is a line three.js gives no nearest point: its sides do.
      const sides = [new Line3(vector(a), vector(b)), new Line3(vector(b), vector(c)), new Line3(vector(c), vector(a))];
      const toSide = (side: Line3) =>
        side.distance() > 0
          ? side.closestPointToPoint(vector(p), true, new Vector3()).distanceTo(vector(p))
          : side.start.distanceTo(vector(p));
      const triangle = new Triangle(vector(a), vector(b), vector(c));
      const nearest =
        area > 0
          ? triangle.closestPointToPoint(vector(p), new Vector3()).distanceTo(vector(p))
          : Math.min(...sides.map(toSide));
      fc.pre(area === 0 || area > 1e-3);
      const found = noFound();
      pointToTriangle(Float64Array.from([9, 9, ...p]), 2, Float64Array.from([...a, ...b, ...c]), found);
      expect(Math.sqrt(found[0]!)).toBeCloseTo(nearest, 4);
      p.forEach((each, i) => expect(found[1 + i]).toBeCloseTo(each, 12));
    }),
    { seed: SEED, numRuns: 4000 },
  );
});

// Along the axes a rectangle is a box without height: its nearest point has every coordinate clamped (Ericson 5.1.3).
test(`a point and a rectangle are as near as its clamped coordinates (seed ${SEED})`, () => {
  fc.assert(
    fc.property(point, flats, (p, { corner, first, second }) => {
      const far = corner.map((each, i) => each + first[i]! + second[i]!);
      const clamped = p.map((each, i) =>
        Math.min(Math.max(each, Math.min(corner[i]!, far[i]!)), Math.max(corner[i]!, far[i]!)),
      );
      const found = noFound();
      pointToFlat(flatBy(corner, first, second), FLAT, Float64Array.from([9, ...p]), 1, found);
      const square = p.reduce((sum, each, i) => sum + (each - clamped[i]!) ** 2, 0);
      expect(found[0]).toBeCloseTo(square, 6);
      clamped.forEach((each, i) => expect(found[1 + i]).toBeCloseTo(each, 3));
    }),
    { seed: SEED, numRuns: 2000 },
  );
});

const edgesOf = (corners: readonly Vector3[]) =>
  corners.map((a, i) => new Line3(a, corners[(i + 1) % corners.length]!));
const cornersOf = ({ corner, first, second }: { corner: Triple; first: Triple; second: Triple }) => {
  const [o, e, d] = [vector(corner), vector(first), vector(second)];
  return [o, o.clone().add(e), o.clone().add(e).add(d), o.clone().add(d)];
};

// Line3.distanceSqToLine3 of three.js, for every pair of edges.
test(`the edges of both are as near as three.js finds them (seed ${SEED})`, () => {
  fc.assert(
    fc.property(flats, point, point, point, (flat, a, b, c) => {
      // A side without length is a point, and asked with the corners.
      fc.pre(
        [
          [a, b],
          [b, c],
          [c, a],
        ].every(([u, v]) => vector(u!).distanceTo(vector(v!)) > 0.01),
      );
      const [p, q] = [new Vector3(), new Vector3()];
      let least = Infinity;
      for (const one of edgesOf(cornersOf(flat)))
        for (const other of edgesOf([a, b, c].map(vector))) least = Math.min(least, one.distanceSqToLine3(other, p, q));
      const found = noFound();
      edgesToTriangle(flatBy(flat.corner, flat.first, flat.second), FLAT, Float64Array.from([...a, ...b, ...c]), found);
      expect(Math.sqrt(found[0]!)).toBeCloseTo(Math.sqrt(least), 4);
      const apart = Math.hypot(...[1, 2, 3].map((i) => found[i]! - found[i + 3]!));
      expect(apart).toBeCloseTo(Math.sqrt(least), 4);
    }),
    { seed: SEED, numRuns: 3000 },
  );
});

describe('a rectangle and a triangle', () => {
  const real = flats.filter(({ first, second }) => vector(first).cross(vector(second)).length() > 0);

  test(`go through each other where three-mesh-bvh says so (seed ${SEED})`, () => {
    let [through, apart] = [0, 0];
    fc.assert(
      fc.property(real, triple(anywhere), triple(anywhere), triple(anywhere), (flat, a, b, c) => {
        const [o, e, f, d] = cornersOf(flat) as [Vector3, Vector3, Vector3, Vector3];
        const other = new ExtendedTriangle(vector(a), vector(b), vector(c));
        fc.pre(new Triangle(vector(a), vector(b), vector(c)).getArea() > 0.1);
        const meets = [new ExtendedTriangle(o, e, f), new ExtendedTriangle(o, f, d)].some((half) =>
          half.intersectsTriangle(other),
        );
        // What all but touches is left to either.
        const gap = Math.min(
          ...[new ExtendedTriangle(o, e, f), new ExtendedTriangle(o, f, d)].map((half) =>
            half.distanceToTriangle(other),
          ),
        );
        fc.pre(meets || gap > 1e-3);
        const found = noFound();
        crossTriangle(flatBy(flat.corner, flat.first, flat.second), FLAT, Float64Array.from([...a, ...b, ...c]), found);
        if (meets) {
          through++;
          expect(found[0]).toBeLessThan(1e-5);
        } else {
          apart++;
          // What crosses the plane beside it is not said to meet it.
          expect(found[0]).toBeGreaterThan(1e-9);
        }
      }),
      { seed: SEED, numRuns: 2500 },
    );
    expect(Math.min(through, apart)).toBeGreaterThan(150);
  });

  test('are as near as their corners where a corner is nearest, and where both are points', () => {
    const near = (flat: Float64Array, ...corners: Triple[]) => {
      const found = noFound();
      cornersToTriangle(flat, FLAT, Float64Array.from(corners.flat()), found);
      return Math.sqrt(found[0]!);
    };
    const square = flatBy([0, 0, 0], [2, 0, 0], [0, 2, 0]);
    expect(near(square, [5, 6, 0], [9, 9, 0], [9, 6, 0])).toBeCloseTo(5, 9);
    expect(near(square, [-9, -9, 3], [9, -9, 3], [0, 30, 3])).toBeCloseTo(3, 9);
    expect(near(flatBy([0, 0, 0], [0, 0, 0], [0, 0, 0]), [3, 4, 0], [3, 4, 0], [3, 4, 0])).toBeCloseTo(5, 9);
    expect(near(square, [1, 1, 7], [1, 1, 7], [1, 1, 7])).toBeCloseTo(7, 9);
  });
});

const face: Face = {
  id: 'F',
  on: 'in',
  piece: 'P',
  joint: 'J',
  origin: [3, -2],
  along: [0.96, 0.28],
  inward: [-0.28, 0.96],
};
const profiles = fc.constantFrom<Point[]>(
  [[0, 0], [20, 0], [20, 8], [0, 8]],
  [[0, 0], [20, 0], [20, 0], [26, 5], [20, 9], [6, 12], [0, 8]],
  [[0, 0], [12, -6], [24, 0], [12, 5]],
); // prettier-ignore

/** Any triangles about, as they come, each by itself. */
function meshOf(triangles: readonly (readonly [Triple, Triple, Triple])[]): Mesh {
  const normals = triangles.flatMap(([a, b, c]) =>
    new Triangle(vector(a), vector(b), vector(c)).getNormal(new Vector3()).toArray(),
  );
  return {
    positions: Float64Array.from(triangles.flat(2)),
    triangles: Uint32Array.from({ length: 3 * triangles.length }, (_, i) => i),
    normals: Float64Array.from(normals),
    patches: new Uint8Array(triangles.length),
    chordError: 0,
  };
}
/** Triangles about the solid, drawn at random (Lehmer's generator): near it, in it, through it, beside it. */
function scattered(seed: number): [Triple, Triple, Triple][] {
  let state = seed;
  const draw = (least: number, most: number) =>
    least + ((most - least) * (state = (state * 48271) % 2147483647)) / 2147483647;
  const count = Math.floor(draw(2, 70));
  const near = draw(0.3, 1.5);
  return Array.from({ length: count }, () => {
    const a: Triple = [13 + near * draw(-38, 38), 10 + near * draw(-35, 35), 5 + near * draw(-30, 30)];
    const beside = (): Triple => a.map((each) => each + draw(-6, 6)) as Triple;
    return [a, beside(), beside()];
  });
}

// What is passed over cannot be nearer: the nearest of many is the nearest of each asked by itself, where next to
// nothing is passed over.
test(`of many triangles the nearest is the one that is nearest by itself (seed ${SEED})`, () => {
  fc.assert(
    fc.property(profiles, fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 20 }), (profile, drawn, deep) => {
      const all = scattered(drawn);
      const solid = solidOf(face, profile, [0, deep]);
      const asked = (triangles: typeof all) =>
        Math.abs(thinnest(solid, [patchTreesOf(meshOf(triangles)).deck]).distance);
      const alone = all.map((each) => asked([each]));
      const least = Math.min(...alone);
      // Any point of a triangle is at least as far as the triangle.
      all.forEach((each, i) => expect(alone[i]!).toBeLessThanOrEqual(distanceTo(solid, each[0]) + 1e-6));
      expect(asked(all)).toBeCloseTo(least, 6);
      // However the solid is turned about its profile's corners, and whatever is expected.
      const turned = solidOf(face, [...profile.slice(2), ...profile.slice(0, 2)], [0, deep]);
      expect(Math.abs(thinnest(turned, [patchTreesOf(meshOf(all)).deck], least / 2).distance)).toBeCloseTo(least, 6);
    }),
    { seed: SEED, numRuns: 150 },
  );
});

test('the boxes of a solid hold its parts, and nothing more: by the corners of each', () => {
  const profile: Point[] = [[0, 0], [20, 0], [26, 5], [20, 9], [6, 12], [0, 8]]; // prettier-ignore
  const { boxes, flats: sides, bounds } = solidOf(face, profile, [4, 15]);
  const at = ([s, z]: Point, t: number) => [3 + 0.96 * s - 0.28 * t, -2 + 0.28 * s + 0.96 * t, z];
  const around = (points: readonly number[][]) => [
    ...[0, 1, 2].map((i) => Math.min(...points.map((each) => each[i]!))),
    ...[0, 1, 2].map((i) => Math.max(...points.map((each) => each[i]!))),
  ];
  const parts = [
    ...profile.map((a, i) => [a, profile[(i + 1) % 6]!].flatMap((each) => [at(each, 4), at(each, 15)])),
    profile.map((each) => at(each, 4)),
    profile.map((each) => at(each, 15)),
  ];
  const groups = [parts.slice(0, 4), parts.slice(4)].map((those) => those.flat());
  [parts.flat(), ...parts, ...groups].forEach((points, box) =>
    around(points).forEach((value, i) => expect(boxes[6 * box + i], `${box} ${i}`).toBeCloseTo(value, 9)),
  );
  expect(boxes).toHaveLength(6 * (1 + 8 + 2));
  expect(bounds).toEqual([0, 0, 26, 12]);
  // Each flat's direction is square to its sides, of length 1, and away from the solid's middle.
  const middle = vector(at([11, 5], 9));
  profile.forEach((_, i) => {
    const part = (k: number) => vector([...sides.subarray(FLAT * i + k, FLAT * i + k + 3)]);
    const [corner, first, second, normal] = [part(0), part(3), part(6), part(9)];
    expect(normal!.length()).toBeCloseTo(1, 9);
    expect(normal!.dot(first!)).toBeCloseTo(0, 9);
    expect(normal!.dot(second!)).toBeCloseTo(0, 9);
    expect(normal!.dot(corner!.clone().sub(middle))).toBeGreaterThan(0);
  });
});

// Smallest case of a fault: heights of 5e-324 over a plane were taken for a crossing far beside the edge.
test('a triangle in the plane of a side, but for next to nothing, is as far as in it', () => {
  const solid = solidOf(face, [[0, 0], [20, 0], [20, 8], [0, 8]], [0, 1]); // prettier-ignore
  const level = (z: number) => meshOf([[[0, 0, 0], [0, -0.6, 0], [-1.65, 0, z]]]); // prettier-ignore
  const away = (z: number) => thinnest(solid, [patchTreesOf(level(z)).deck]).distance;
  for (const z of [5e-324, -5e-324, 1e-200, -1e-200]) expect(away(z)).toBeCloseTo(away(0), 9);
});

// By hand: a level triangle 3 mm behind either end of a prism from depth 4 to 15, over the middle of its profile.
test('over the end of a chamber the nearest place lies square across on that end', () => {
  const straight: Face = { ...face, origin: [0, 0], along: [1, 0], inward: [0, 1] };
  const solid = solidOf(straight, [[0, 0], [20, 0], [20, 8], [0, 8]], [4, 15]); // prettier-ignore
  for (const [y, end] of [
    [1, 4],
    [18, 15],
  ] as const) {
    const mesh = meshOf([[[10, y, 4], [11, y, 4.5], [10, y, 5]]]); // prettier-ignore
    const { distance, onChamber, onSurface } = thinnest(solid, [patchTreesOf(mesh).deck]);
    expect(Math.abs(distance)).toBeCloseTo(3, 9);
    expect([onChamber[1], onSurface[1]]).toEqual([end, y]);
    expect([onChamber[0], onChamber[2]]).toEqual([onSurface[0], onSurface[2]]);
    expect(distanceTo(solid, [10, y, 4])).toBeCloseTo(3, 9);
  }
});
