import type { Vertex } from '../../../src/contour/vertex.js';
import type { Plan } from '../../../src/plan.js';

type Spot = readonly [number, number];
interface Face {
  readonly origin: Spot;
  readonly along: Spot;
  readonly inward: Spot;
}

const dot = (a: Spot, b: Spot) => a[0] * b[0] + a[1] * b[1];

/**
 * The finished deck and bottom line on a face by brute force: every triangle of the mesh is cut by the face's plane,
 * and of all the cuts that pass over `s` the highest and the lowest end is taken.
 */
export function bruteFace({ board: { mesh } }: Plan, { origin, along, inward }: Face) {
  const cuts: (readonly [Spot, Spot])[] = [];
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const corners = [0, 1, 2].map((k) => {
      const at = 3 * mesh.triangles[i + k]!;
      const [x, y, z] = [mesh.positions[at]!, mesh.positions[at + 1]!, mesh.positions[at + 2]!];
      const from: Spot = [x - origin[0], y - origin[1]];
      return { s: dot(from, along), t: dot(from, inward), z };
    });
    const meets = corners.flatMap((a, k): Spot[] => {
      const b = corners[(k + 1) % 3]!;
      if (a.t < 0 === b.t < 0) return [];
      const share = a.t / (a.t - b.t);
      return [[a.s + share * (b.s - a.s), a.z + share * (b.z - a.z)]];
    });
    if (meets.length === 2) cuts.push([meets[0]!, meets[1]!]);
  }
  return (s: number): { deck: number; bottom: number } => {
    let [deck, bottom] = [-Infinity, Infinity];
    for (const [a, b] of cuts) {
      if (Math.min(a[0], b[0]) > s || Math.max(a[0], b[0]) < s) continue;
      const z = a[0] === b[0] ? a[1] : a[1] + ((s - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
      [deck, bottom] = [Math.max(deck, z), Math.min(bottom, z)];
    }
    return { deck, bottom };
  };
}

/** A place on one face as it comes out at another, straight across, both given in the board's frame. */
export function across(from: Face, to: Face): (s: number) => number {
  return (s) => {
    const at: Spot = [from.origin[0] + s * from.along[0], from.origin[1] + s * from.along[1]];
    const off: Spot = [at[0] - to.origin[0], at[1] - to.origin[1]];
    const t = -dot(off, to.inward) / dot(from.inward, to.inward);
    return dot([off[0] + t * from.inward[0], off[1] + t * from.inward[1]], to.along);
  };
}

/** Points close together along a line with arcs, by the definition of a bulge: the tangent of a quarter of its turn. */
export function pointsAlong(vertices: readonly Vertex[], closed: boolean): Spot[] {
  const points: Spot[] = [];
  const last = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < last; i++) {
    const [a, b] = [vertices[i]!, vertices[(i + 1) % vertices.length]!];
    const turn = 4 * Math.atan(a.bulge ?? 0);
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    for (let k = 0; k <= 24; k++) {
      const u = k / 24;
      if (Math.abs(turn) < 1e-9) points.push([a.x + u * dx, a.y + u * dy]);
      else {
        // From the arc's first end, by the chord at `u` of its turn: its length and its angle to the whole chord.
        const length = Math.sin((u * turn) / 2) / Math.sin(turn / 2);
        const angle = (u * turn) / 2 - turn / 2;
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        points.push([a.x + length * (dx * c - dy * s), a.y + length * (dx * s + dy * c)]);
      }
    }
  }
  return points;
}

/** How far a point is from the nearest of the straight pieces between points, mm. */
export function awayFrom([x, y]: Spot, points: readonly Spot[]): number {
  let least = Infinity;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const long = dx * dx + dy * dy;
    const u = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / long));
    least = Math.min(least, Math.hypot(x - a[0] - u * dx, y - a[1] - u * dy));
  }
  return least;
}
