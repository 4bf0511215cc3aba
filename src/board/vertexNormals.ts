import type { Grid } from './grid.js';
import { PATCHES, type Mesh } from './mesh.js';

/**
 * How the surface lies around each point of the grid, for moving it inward.
 *
 * Layout: `normals` x, y, z a point, the mean direction outward; `cosines` one number a point and patch, in the order
 * of `PATCHES`: the least cosine between that direction and the planes of the patch that meet there, 0 where none does.
 */
export interface VertexNormals {
  readonly normals: Float64Array;
  readonly cosines: Float64Array;
}

/** A point on an edge sharper than this, as a cosine, is moved no further. */
const SHARPEST = 0.35;

export function vertexNormalsOf(
  { positions, same }: Grid,
  { triangles, patches, normals: planes }: Mesh,
): VertexNormals {
  const normals = new Float64Array(positions.length);
  for (let at = 0, plane = 0; at < triangles.length; at += 3, plane += 3) {
    const x = planes[plane]!;
    const y = planes[plane + 1]!;
    const z = planes[plane + 2]!;
    for (let corner = at; corner < at + 3; corner++) {
      const vertex = 3 * triangles[corner]!;
      normals[vertex] = normals[vertex]! + x;
      normals[vertex + 1] = normals[vertex + 1]! + y;
      normals[vertex + 2] = normals[vertex + 2]! + z;
    }
  }
  for (let at = 0; at < normals.length; at += 3) {
    const x = normals[at]!;
    const y = normals[at + 1]!;
    const z = normals[at + 2]!;
    const size = Math.sqrt(x * x + y * y + z * z) || 1;
    normals[at] = x / size;
    normals[at + 1] = y / size;
    normals[at + 2] = z / size;
  }
  const count = PATCHES.length;
  const cosines = new Float64Array((positions.length / 3) * count);
  for (let at = 0, plane = 0; at < triangles.length; at += 3, plane += 3) {
    const patch = patches[plane / 3]!;
    for (let corner = at; corner < at + 3; corner++) {
      const vertex = triangles[corner]!;
      const n = 3 * vertex;
      const cosine =
        normals[n]! * planes[plane]! + normals[n + 1]! * planes[plane + 1]! + normals[n + 2]! * planes[plane + 2]!;
      const kept = cosine > SHARPEST ? cosine : SHARPEST;
      const place = vertex * count + patch;
      if (cosines[place] === 0 || kept < cosines[place]!) cosines[place] = kept;
    }
  }
  // Points that stand for others lend them what they found.
  for (let i = 0; i < same.length; i++) {
    const from = same[i]!;
    if (from === i) continue;
    for (let axis = 0; axis < 3; axis++) normals[3 * i + axis] = normals[3 * from + axis]!;
    for (let patch = 0; patch < count; patch++) cosines[count * i + patch] = cosines[count * from + patch]!;
  }
  return { normals, cosines };
}
