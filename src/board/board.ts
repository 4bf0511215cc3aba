import type { BoardSpec } from '../job/spec/board.js';
import { gridOf } from './gridOf.js';
import { corrected, type Correction } from './correct.js';
import { CHORD_ERROR, type Grid } from './grid.js';
import { vertexNormalsOf, type VertexNormals } from './vertexNormals.js';
import { planAreaOf, volumeOf } from './measure.js';
import { meshOf, type Mesh } from './mesh.js';
import { surfaceOf, type Surface } from './surface.js';

/** The finished, unglassed board: its smooth surface, the same as a grid and as a closed mesh, and what it measures. */
export interface Board {
  readonly surface: Surface;
  readonly grid: Grid;
  readonly mesh: Mesh;
  readonly vertexNormals: VertexNormals;
  /** mm. */
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** Litres. */
  readonly volume: number;
  /** Of the outline in plan, m². */
  readonly area: number;
}

/**
 * @param corrections how the true board differs from the drawing; none for the drawing itself
 * @param chordError how far the mesh may lie from the smooth surface, mm: coarser for raw stock
 */
export function boardOf(
  spec: BoardSpec,
  corrections: readonly Correction[] = [],
  chordError: number = CHORD_ERROR,
): Board {
  const surface = corrected(surfaceOf(spec), corrections);
  const grid = gridOf(surface, chordError);
  const mesh = meshOf(grid);
  const vertexNormals = vertexNormalsOf(grid, mesh);
  let width = 0;
  let thickness = 0;
  for (const x of grid.xs) {
    width = Math.max(width, surface.outlines[0].outer(x) + surface.outlines[1].outer(x));
    thickness = Math.max(thickness, surface.thickness(x));
  }
  return {
    surface,
    grid,
    mesh,
    vertexNormals,
    length: spec.length,
    width,
    thickness,
    volume: volumeOf(mesh),
    area: planAreaOf(surface),
  };
}
