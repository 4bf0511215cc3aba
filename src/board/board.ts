import type { BoardSpec } from '../job/spec/board.js';
import { gridOf } from './gridOf.js';
import { corrected, type Correction } from './correct.js';
import { CHORD_ERROR, type Grid } from './grid.js';
import { vertexNormalsOf, type VertexNormals } from './vertexNormals.js';
import { planAreaOf, volumeOf } from './measure.js';
import { meshOf, type Mesh } from './mesh.js';
import { provedOf } from './proved.js';
import { surfaceOf, type Surface } from './surface.js';

/** The finished, unglassed board: its smooth surface, the same as a grid and as a closed mesh, and what it measures. */
export interface Board {
  readonly surface: Surface;
  readonly grid: Grid;
  readonly mesh: Mesh;
  readonly vertexNormals: VertexNormals;
  /** What walls are proved against: the mesh itself, or the triangles of the scan that the board was taken from. */
  readonly proved: Mesh;
  /** How far `proved` may lie within the mesh, mm: nothing but for a scan. It is left over in what is drawn. */
  readonly rough: number;
  /** mm. */
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** Litres. */
  readonly volume: number;
  /** Of the outline in plan, m². */
  readonly area: number;
}

/** More than this, mm, is not left over everywhere: where a scan is rougher, chambers are corrected one by one. */
const MOST_ROUGH = 2;

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
  const { scan } = spec;
  const proved = scan ? provedOf(scan, grid, scan.form.off.usual) : mesh;
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
    proved,
    rough: scan ? Math.min(scan.form.off.most, MOST_ROUGH) : 0,
    length: spec.length,
    width,
    thickness,
    volume: volumeOf(proved),
    area: planAreaOf(surface),
  };
}
