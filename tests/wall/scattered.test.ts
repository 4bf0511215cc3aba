import fc from 'fast-check';
import { Triangle, Vector3 } from 'three';
import { ExtendedTriangle } from 'three-mesh-bvh';
import { expect, test } from 'vitest';
import type { Mesh } from '../../src/board/mesh.js';
import type { Point } from '../../src/contour/point.js';
import { toBoard } from '../../src/layup/frame.js';
import type { Face } from '../../src/layup/layup.js';
import { patchTreesOf } from '../../src/wall/patchTree.js';
import { solidOf } from '../../src/wall/solid.js';
import { thinnest } from '../../src/wall/thinnest.js';
import { evenly } from '../evenly.js';

const SEED = 20261127;

const faceOf = (turn: number, way: 1 | -1): Face => ({
  id: 'F',
  on: 'in',
  piece: 'P',
  joint: 'J',
  origin: [20, -30],
  along: [Math.cos(turn), Math.sin(turn)],
  inward: [0 - way * Math.sin(turn), way * Math.cos(turn)],
});
/** A convex profile about s = 400, z = 50. */
const profiles = fc.array(evenly(0, 1), { minLength: 3, maxLength: 9 }).map((parts) => {
  const sum = parts.reduce((all, part) => all + part + 0.3, 0);
  let angle = 0;
  return parts.map((part): Point => {
    angle += (2 * Math.PI * (part + 0.3)) / sum;
    return [400 + 90 * Math.cos(angle), 50 + 30 * Math.sin(angle)];
  });
});
const axis = evenly(-1, 1);
const place = fc.tuple(axis, axis, axis, axis).filter(([x, y, z]) => Math.hypot(x, y, z) > 0.1);
const places = fc.array(place, { minLength: 1, maxLength: 60 });

/** Small triangles around a solid, each turned away from its middle. */
function scattered(all: readonly (readonly [number, number, number, number])[], middle: Vector3): Mesh {
  const positions: number[] = [];
  const normals: number[] = [];
  for (const [x, y, z, turn] of all) {
    const away = new Vector3(x, y, z).normalize();
    const at = away
      .clone()
      .multiplyScalar(110 + 60 * Math.abs(turn))
      .add(middle);
    const across = new Vector3(Math.cos(9 * turn), Math.sin(9 * turn), 0.3).cross(away).normalize();
    const up = away.clone().cross(across);
    const corners = [0, 1, 2].map((i) =>
      at
        .clone()
        .addScaledVector(across, 9 * Math.cos((2 * Math.PI * i) / 3))
        .addScaledVector(up, 14 * Math.sin((2 * Math.PI * i) / 3)),
    );
    positions.push(...corners.flatMap((corner) => corner.toArray()));
    normals.push(...new Triangle(corners[0], corners[1], corners[2]).getNormal(new Vector3()).toArray());
  }
  return {
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from(positions.slice(0, positions.length / 3).keys()),
    normals: Float64Array.from(normals),
    patches: new Uint8Array(all.length),
    chordError: 0,
  };
}

// Brute force: every triangle of the solid's outside against every one around it, by three-mesh-bvh.
test(`of triangles scattered around a chamber the nearest is found, whichever side of it is near (seed ${SEED})`, () => {
  let apart = 0;
  fc.assert(
    fc.property(
      profiles,
      places,
      evenly(-0.1, 0.1),
      fc.constantFrom(1 as const, -1 as const),
      fc.integer({ min: 5, max: 120 }),
      (profile, all, turn, way, deep) => {
        const face = faceOf(turn, way);
        const corner = ([s, z]: Point, t: number) => new Vector3(...toBoard(face, s, z, t));
        const mean = (axis: 0 | 1) => profile.reduce((sum, each) => sum + each[axis], 0) / profile.length;
        const within: Point = [mean(0), mean(1)];
        const middle = corner(within, deep / 2);
        const mesh = scattered(all, middle);
        const outside = profile.flatMap((a, i): ExtendedTriangle[] => {
          const b = profile[(i + 1) % profile.length]!;
          const [a0, b0, a1, b1] = [corner(a, 0), corner(b, 0), corner(a, deep), corner(b, deep)];
          const ends = [0, deep].map((t) => new ExtendedTriangle(corner(within, t), corner(a, t), corner(b, t)));
          return [new ExtendedTriangle(a0, b0, b1), new ExtendedTriangle(a0, b1, a1), ...ends];
        });
        let exact = Infinity;
        for (let t = 0; t < all.length; t++) {
          const [a, b, c] = [0, 3, 6].map((i) => new Vector3().fromArray(mesh.positions, 9 * t + i));
          const one = new ExtendedTriangle(a, b, c);
          for (const part of outside)
            exact = Math.min(exact, part.intersectsTriangle(one) ? 0 : part.distanceToTriangle(one));
        }
        const found = thinnest(solidOf(face, profile, [0, deep]), [patchTreesOf(mesh).deck]);
        expect(Math.abs(found.distance)).toBeCloseTo(exact, 3);
        if (exact > 0) {
          apart++;
          expect(new Vector3(...found.onChamber).distanceTo(new Vector3(...found.onSurface))).toBeCloseTo(exact, 3);
        }
      },
    ),
    { seed: SEED, numRuns: 60 },
  );
  expect(apart).toBeGreaterThan(30);
});
