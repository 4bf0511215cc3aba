import type { Grid } from '../board/grid.js';
import { PATCHES, type Mesh, type Patch } from '../board/mesh.js';
import { sharedPoints } from '../board/weld.js';

/**
 * The grid of the surface moved inward, every point so far that the planes around it stand off by the wall their patch asks for. What
 * lies within is, but for rounding, where a chamber may go; the proof decides. Same layout as `Grid.positions`.
 */
export type Shell = Float64Array;

/** A point on an edge sharper than this (cosine to the planes that meet there) is not moved further. */
const SHARPEST = 0.35;

export function shellOf(grid: Grid, mesh: Mesh, walls: Readonly<Record<Patch, number>>): Shell {
  const p = grid.positions;
  const { triangles, patches } = mesh;
  const asked = PATCHES.map((patch) => walls[patch]);
  const planes = new Float64Array(3 * patches.length);
  const normals = new Float64Array(p.length);
  for (let t = 0; t < patches.length; t++) {
    const a = 3 * triangles[3 * t]!,
      b = 3 * triangles[3 * t + 1]!,
      c = 3 * triangles[3 * t + 2]!;
    const ux = p[b]! - p[a]!,
      uy = p[b + 1]! - p[a + 1]!,
      uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!,
      vy = p[c + 1]! - p[a + 1]!,
      vz = p[c + 2]! - p[a + 2]!;
    const nx = uy * vz - uz * vy,
      ny = uz * vx - ux * vz,
      nz = ux * vy - uy * vx;
    const size = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
    planes[3 * t] = nx / size;
    planes[3 * t + 1] = ny / size;
    planes[3 * t + 2] = nz / size;
    for (let corner = 0; corner < 3; corner++) {
      const at = 3 * triangles[3 * t + corner]!;
      normals[at]! += nx / size;
      normals[at + 1]! += ny / size;
      normals[at + 2]! += nz / size;
    }
  }
  for (let at = 0; at < normals.length; at += 3) {
    const size = Math.sqrt(normals[at]! ** 2 + normals[at + 1]! ** 2 + normals[at + 2]! ** 2) || 1;
    for (let axis = 0; axis < 3; axis++) normals[at + axis]! /= size;
  }
  const moves = new Float64Array(p.length / 3);
  for (let t = 0; t < patches.length; t++) {
    for (let corner = 0; corner < 3; corner++) {
      const vertex = triangles[3 * t + corner]!;
      const at = 3 * vertex;
      const cosine =
        normals[at]! * planes[3 * t]! + normals[at + 1]! * planes[3 * t + 1]! + normals[at + 2]! * planes[3 * t + 2]!;
      const move = asked[patches[t]!]! / Math.max(SHARPEST, cosine);
      if (move > moves[vertex]!) moves[vertex] = move;
    }
  }
  const same = sharedPoints(grid);
  const shell = new Float64Array(p.length);
  for (let i = 0; i < same.length; i++) {
    const from = same[i]!;
    for (let axis = 0; axis < 3; axis++)
      shell[3 * i + axis] = p[3 * from + axis]! - moves[from]! * normals[3 * from + axis]!;
  }
  return shell;
}
