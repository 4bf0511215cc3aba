import type { Grid } from '../board/grid.js';
import { PATCHES, type Mesh, type Patch } from '../board/mesh.js';

/**
 * The grid of the surface moved inward, every point so far that the planes around it stand off by the wall their patch asks for. What
 * lies within is, but for rounding, where a chamber may go; the proof decides. Same layout as `Grid.positions`.
 */
export type Shell = Float64Array;

/** A point on an edge sharper than this (cosine to the planes that meet there) is not moved further. */
const SHARPEST = 0.35;

export function shellOf(grid: Grid, mesh: Mesh, walls: Readonly<Record<Patch, number>>): Shell {
  const p = grid.positions;
  const { triangles, patches, normals: planes } = mesh;
  const asked = PATCHES.map((patch) => walls[patch]);
  const normals = new Float64Array(p.length);
  for (let at = 0; at < triangles.length; at++) {
    const vertex = 3 * triangles[at]!;
    const plane = at - (at % 3);
    normals[vertex]! += planes[plane]!;
    normals[vertex + 1]! += planes[plane + 1]!;
    normals[vertex + 2]! += planes[plane + 2]!;
  }
  for (let at = 0; at < normals.length; at += 3) {
    const size = Math.sqrt(normals[at]! ** 2 + normals[at + 1]! ** 2 + normals[at + 2]! ** 2) || 1;
    for (let axis = 0; axis < 3; axis++) normals[at + axis]! /= size;
  }
  const moves = new Float64Array(p.length / 3);
  for (let at = 0; at < triangles.length; at++) {
    const vertex = triangles[at]!;
    const plane = at - (at % 3);
    const n = 3 * vertex;
    const cosine =
      normals[n]! * planes[plane]! + normals[n + 1]! * planes[plane + 1]! + normals[n + 2]! * planes[plane + 2]!;
    const move = asked[patches[plane / 3]!]! / Math.max(SHARPEST, cosine);
    if (move > moves[vertex]!) moves[vertex] = move;
  }
  const { same } = grid;
  const shell = new Float64Array(p.length);
  for (let i = 0; i < same.length; i++) {
    const from = same[i]!;
    for (let axis = 0; axis < 3; axis++)
      shell[3 * i + axis] = p[3 * from + axis]! - moves[from]! * normals[3 * from + axis]!;
  }
  return shell;
}
