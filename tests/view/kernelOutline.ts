import type { CrossSection, ManifoldToplevel } from 'manifold-3d';
import { areaOf } from '../../src/contour/area.js';
import type { Point } from '../../src/contour/point.js';
import type { Face } from '../../src/layup/layup.js';
import { solidOfChamber, solidOfMesh } from '../oracle/kernel.js';
import type { Plan } from '../../src/plan.js';

/** manifold-3d slices across z: turned by −90° about y, x becomes z, and y stays across. */
const ACROSS = [0, -90, 0] as const;

/** The board's cross-section at `x` by manifold-3d: `[−z, y]` of the board. */
export function boardAcross(wasm: ManifoldToplevel, { board }: Plan, x: number): CrossSection {
  return solidOfMesh(wasm, board.mesh)
    .rotate([...ACROSS])
    .slice(x);
}

/** A chamber's cross-section at `x` by manifold-3d: `[−z, y]` of the board. */
export function chamberSlice(
  wasm: ManifoldToplevel,
  face: Face,
  { profile, depth }: Plan['chambers'][number],
  x: number,
): CrossSection {
  return solidOfChamber(wasm, face, profile, depth)
    .rotate([...ACROSS])
    .slice(x);
}

/** A band `wide` mm wide along the line `y = at + slope · x`, to cut a figure with. */
export function bandAlong(
  { CrossSection: Figure }: ManifoldToplevel,
  at: number,
  slope: number,
  wide: number,
): CrossSection {
  const far = 10_000;
  return new Figure([
    [
      [-far, at - slope * far - wide / 2],
      [far, at + slope * far - wide / 2],
      [far, at + slope * far + wide / 2],
      [-far, at - slope * far + wide / 2],
    ],
  ]);
}

export const areaWithin = (corners: readonly Point[]): number => areaOf(corners.map(([x, y]) => ({ x, y })));
