import { areaOf } from '../contour/area.js';
import { PATCHES, type Mesh, type Patch } from '../board/mesh.js';

/** A vertical plane in the board frame: all points with `a·x + b·y = d`; (a, b) a unit vector. Mm. */
export interface UprightPlane {
  readonly a: number;
  readonly b: number;
  readonly d: number;
}

/**
 * Where a plane cuts the finished surface: a closed line, counter-clockwise as seen with `across` to the right and z
 * up, mm.
 */
export interface Loop {
  /** Board frame. */
  readonly points: readonly (readonly [x: number, y: number, z: number])[];
  /** Of the surface between each point and the next. */
  readonly patches: readonly Patch[];
}

/** Points of a cut nearer than this, mm, are one: a plane through a mesh's vertex meets several edges there. */
const SAME = 1e-7;

/**
 * Cuts the board's mesh by an upright plane. A vertex on the plane counts as behind it, so that every triangle is
 * crossed by two edges or none, and the cuts of a closed mesh always join to closed lines.
 *
 * @param across direction in the plane that a viewer sees to the right, board frame, unit vector
 */
export function sliceMesh(
  mesh: Pick<Mesh, 'positions' | 'triangles' | 'patches'>,
  { a, b, d }: UprightPlane,
  across: readonly [number, number],
): Loop[] {
  const { positions: p, triangles, patches } = mesh;
  const count = p.length / 3;
  const side = new Float64Array(count);
  for (let i = 0; i < count; i++) side[i] = a * p[3 * i]! + b * p[3 * i + 1]! - d;

  // Each crossed triangle leads from the edge on which it comes in front of the plane to the one on which it goes
  // behind.
  const cuts = new Map<number, { readonly leaves: number; readonly patch: Patch }>();
  for (let t = 0; t < patches.length; t++) {
    let enters = -1;
    let leaves = -1;
    for (let k = 0; k < 3; k++) {
      const i = triangles[3 * t + k]!;
      const j = triangles[3 * t + ((k + 1) % 3)]!;
      if (side[i]! > 0 === side[j]! > 0) continue;
      if (side[j]! > 0) enters = i * count + j;
      else leaves = j * count + i;
    }
    // The neighbour over the leaving edge runs along it the other way, so it is filed under the same number.
    if (enters >= 0) cuts.set(enters, { leaves, patch: PATCHES[patches[t]!]! });
  }

  const at = (edge: number): [number, number, number] => {
    const i = Math.floor(edge / count);
    const j = edge % count;
    const share = side[i]! / (side[i]! - side[j]!);
    return [0, 1, 2].map((axis) => p[3 * i + axis]! + share * (p[3 * j + axis]! - p[3 * i + axis]!)) as never;
  };
  const loops: Loop[] = [];
  while (cuts.size > 0) {
    const points: [number, number, number][] = [];
    const along: Patch[] = [];
    let [edge] = cuts.keys() as IterableIterator<number>;
    for (let cut = cuts.get(edge!); cut; cut = cuts.get(edge!)) {
      cuts.delete(edge!);
      const point = at(edge!);
      const last = points[points.length - 1];
      if (last && Math.hypot(point[0] - last[0], point[1] - last[1], point[2] - last[2]) < SAME) {
        points.pop();
        along.pop();
      }
      points.push(point);
      along.push(cut.patch);
      edge = cut.leaves;
    }
    if (points.length >= 3) loops.push(turned({ points, patches: along }, across));
  }
  return loops;
}

/** The loop counter-clockwise as seen. */
function turned(loop: Loop, [ax, ay]: readonly [number, number]): Loop {
  const { points, patches } = loop;
  if (areaOf(points.map(([x, y, z]) => ({ x: x * ax + y * ay, y: z }))) >= 0) return loop;
  const backward = [...points].reverse();
  // The stretch after a point is, backward, the one before it.
  const stretches = [...patches].reverse();
  return { points: backward, patches: [...stretches.slice(1), stretches[0]!] };
}
