import type { Board } from '../board/board.js';
import type { Grid } from '../board/grid.js';
import { PATCHES, type Patch } from '../board/mesh.js';
import { Kept } from '../kept/kept.js';

/**
 * The grid of the surface moved inward, every point so far that the planes around it stand off by the wall their patch
 * asks for. What lies within is, but for rounding, where a chamber may go; the proof decides. Same layout as
 * `Grid.positions`.
 */
export type Shell = Float64Array;

export function shellOf(board: Pick<Board, 'grid' | 'vertexNormals'>, walls: Readonly<Record<Patch, number>>): Shell {
  const asked = PATCHES.map((patch) => walls[patch]);
  return shells.of(board.grid, asked.join(), () => moved(board, asked));
}

/** One for the chambers, one for the dots, and those of a job beside. */
const shells = new Kept<Grid, Shell>(4);

function moved({ grid, vertexNormals }: Pick<Board, 'grid' | 'vertexNormals'>, asked: readonly number[]): Shell {
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
