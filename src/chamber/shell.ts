import type { Board } from '../board/board.js';
import { PATCHES } from '../board/mesh.js';

/**
 * The grid of the surface moved inward, every point so far that the planes around it stand off by the wall their patch
 * asks for. What lies within is, but for rounding, where a chamber may go; the proof decides. Same layout as
 * `Grid.positions`.
 */
export type Shell = Float64Array;

export function shellOf(
  { grid, vertexNormals }: Pick<Board, 'grid' | 'vertexNormals'>,
  deck: number,
  bottom: number,
  rail: number,
): Shell {
  const walls = { deck, bottom, rail };
  const asked = PATCHES.map((patch) => walls[patch]);
  const { positions } = grid;
  const { normals, cosines } = vertexNormals;
  const shell = new Float64Array(positions.length);
  for (let i = 0, at = 0; at < positions.length; i += PATCHES.length, at += 3) {
    let move = 0;
    for (let patch = 0; patch < PATCHES.length; patch++) {
      const cosine = cosines[i + patch]!;
      if (cosine > 0 && asked[patch]! > move * cosine) move = asked[patch]! / cosine;
    }
    shell[at] = positions[at]! - move * normals[at]!;
    shell[at + 1] = positions[at + 1]! - move * normals[at + 1]!;
    shell[at + 2] = positions[at + 2]! - move * normals[at + 2]!;
  }
  return shell;
}
