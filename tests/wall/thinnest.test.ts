import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { describe, expect, test } from 'vitest';
import type { Mesh } from '../../src/board/mesh.js';
import type { Face } from '../../src/layup/layup.js';
import { patchTreesOf, type PatchTree } from '../../src/wall/patchTree.js';
import { solidOf } from '../../src/wall/solid.js';
import { distanceTo, thinnest } from '../../src/wall/thinnest.js';
import { meshOfBody } from './bodies.js';

const face: Face = { id: 'a-in', on: 'in', piece: 'a', joint: 'b', origin: [0, 0], along: [1, 0], inward: [0, 1] };

/** A box in the board frame as a chamber's solid. */
const box = (x: [number, number], y: [number, number], z: [number, number]) =>
  solidOf(
    face,
    [
      [x[0], z[0]],
      [x[1], z[0]],
      [x[1], z[1]],
      [x[0], z[1]],
    ],
    y,
  );

/** All triangles of a mesh as one patch. */
const whole = (mesh: Mesh): PatchTree => patchTreesOf({ ...mesh, patches: mesh.patches.map(() => 0) }).deck;

/** How far the body's mesh lies within the body, mm; set by its fineness. */
const MESH_SAG = 0.02;

describe('a chamber inside a body of closed form', () => {
  test('keeps from a sphere what its farthest corner leaves of the radius', () => {
    const radius = 100;
    const tree = whole(
      meshOfBody(
        (a, b) => [radius * Math.cos(b) * Math.cos(a), radius * Math.cos(b) * Math.sin(a), radius * Math.sin(b)],
        600,
      ),
    );
    const { distance } = thinnest(box([-20, 30], [-10, 40], [-15, 25]), [tree]);
    const exact = radius - Math.hypot(30, 40, 25);
    expect(distance).toBeLessThanOrEqual(exact);
    expect(distance).toBeGreaterThan(exact - MESH_SAG);
  });

  test('keeps from an ellipsoid, straight up from its middle, what the half-axis leaves over a flat narrower than the curvature', () => {
    const [a, b, c] = [400, 150, 40];
    const tree = whole(
      meshOfBody((u, v) => [a * Math.cos(v) * Math.cos(u), b * Math.cos(v) * Math.sin(u), c * Math.sin(v)], 900),
    );
    // A blade along x at y = 0: its distance is that of the point (x, 0, z) in the plane y = 0, found on the ellipse by
    // its parameter.
    const { distance } = thinnest(box([-50, 60], [0, 1e-6], [-5, 20]), [tree]);
    let exact = Infinity;
    for (let t = 0; t < Math.PI; t += 1e-5)
      exact = Math.min(exact, Math.hypot(a * Math.cos(t) - 60, c * Math.sin(t) - 20));
    expect(distance).toBeLessThanOrEqual(exact + 1e-3);
    expect(distance).toBeGreaterThan(exact - 3 * MESH_SAG);
  });

  test('keeps from an elliptic cylinder what its edge leaves', () => {
    const [a, b, half] = [120, 50, 300];
    const tree = whole(meshOfBody((u, v) => [(half * v) / (Math.PI / 2), a * Math.cos(u), b * Math.sin(u)], 700));
    const { distance } = thinnest(box([-40, 60], [-30, 55], [-10, 22]), [tree]);
    let exact = Infinity;
    for (let t = 0; t < Math.PI; t += 1e-5)
      exact = Math.min(exact, Math.hypot(a * Math.cos(t) - 55, b * Math.sin(t) - 22));
    expect(distance).toBeLessThanOrEqual(exact + 1e-3);
    expect(distance).toBeGreaterThan(exact - MESH_SAG);
  });

  test('has no wall where it comes through', () => {
    const radius = 100;
    const tree = whole(
      meshOfBody(
        (a, b) => [radius * Math.cos(b) * Math.cos(a), radius * Math.cos(b) * Math.sin(a), radius * Math.sin(b)],
        200,
      ),
    );
    expect(thinnest(box([-20, 20], [-20, 20], [-20, 120]), [tree]).distance).toBeLessThanOrEqual(0);
    expect(thinnest(box([150, 170], [-20, 20], [-20, 20]), [tree]).distance).toBeLessThan(0);
  });
});

// three-mesh-bvh (https://github.com/gkjohnson/three-mesh-bvh): an independent tree; asked for the nearest point of the
// surface from points all over the solid, it can only be further than the certified bound, and from the place named it
// is as near as the bound says.
test('no point of a solid is nearer to the surface than the bound, by an independent tree', () => {
  const mesh = meshOfBody(
    (u, v) => [
      700 * Math.cos(v) * Math.cos(u),
      240 * Math.cos(v) * Math.sin(u),
      45 * Math.sin(v) + 0.1 * Math.cos(u) * 200,
    ],
    300,
  );
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(mesh.positions as unknown as Float32Array, 3));
  geometry.setIndex(new BufferAttribute(mesh.triangles.slice(), 1));
  const oracle = new MeshBVH(geometry);
  const [x, y, z]: [number, number][] = [
    [-100, 80],
    [10, 90],
    [-12, 15],
  ];
  const place = thinnest(box(x!, y!, z!), [whole(mesh)]);
  let nearest = Infinity;
  const steps = 24;
  for (let i = 0; i <= steps; i++)
    for (let j = 0; j <= steps; j++)
      for (const k of [0, 1]) {
        const at = (range: [number, number], share: number) => range[0] + (range[1] - range[0]) * share;
        for (const point of [
          [at(x!, i / steps), at(y!, j / steps), z![k]!],
          [at(x!, i / steps), y![k]!, at(z!, j / steps)],
          [x![k]!, at(y!, i / steps), at(z!, j / steps)],
        ] as [number, number, number][]) {
          const { distance } = oracle.closestPointToPoint(new Vector3(...point))!;
          expect(distance).toBeGreaterThanOrEqual(place.distance - 1e-4);
          nearest = Math.min(nearest, distance);
        }
      }
  const fromPlace = oracle.closestPointToPoint(new Vector3(...place.onChamber))!.distance;
  expect(fromPlace).toBeGreaterThanOrEqual(place.distance - 1e-4);
  expect(fromPlace).toBeLessThanOrEqual(place.distance + 1e-4);
  expect(nearest).toBeGreaterThanOrEqual(place.distance - 1e-4);
});

test('what is expected, rightly or wrongly, changes nothing of what is found', () => {
  const tree = whole(
    meshOfBody(
      (u, v) => [700 * Math.cos(v) * Math.cos(u), 240 * Math.cos(v) * Math.sin(u), 45 * Math.sin(v) + 20 * Math.cos(u)],
      200,
    ),
  );
  const solid = box([-100, 80], [10, 90], [-12, 15]);
  const place = thinnest(solid, [tree]);
  expect(distanceTo(solid, place.onSurface)).toBeCloseTo(place.distance, 9);
  for (const expected of [place.distance, place.distance / 2, 0, -place.distance, 2 * place.distance, 9000])
    expect(thinnest(solid, [tree], expected), `${expected}`).toEqual(place);
});
