import type { Mesh, Patch } from '../board/mesh.js';
import type { Chamber } from '../chamber/chamber.js';
import type { Point } from '../contour/point.js';
import type { Row } from '../layup/layup.js';
import type { Plan } from '../plan.js';
import { chamberAcross } from './chamberAcross.js';
import { sliceMesh } from './slice.js';

/** The board cut across at one distance from the nose: `[y, z]`, mm, right side on the right, as seen from the tail. */
export interface Section {
  readonly x: number;
  readonly loops: readonly SurfaceLoop[];
  readonly chambers: readonly CutChamber[];
}

/** A closed line of the finished surface, counter-clockwise, with the patch between each point and the next. */
export interface SurfaceLoop {
  readonly points: readonly Point[];
  readonly patches: readonly Patch[];
}

/** What the cut shows of a chamber, counter-clockwise. */
export interface CutChamber {
  readonly chamber: Chamber;
  readonly row: Row;
  readonly corners: readonly Point[];
}

/** The cross-section of a plan `x` mm from the nose; without loops beyond the board's ends. */
export function sectionAt({ board, layup, chambers }: Pick<Plan, 'board' | 'layup' | 'chambers'>, x: number): Section {
  return { x, loops: surfaceAt(board.mesh, x), chambers: chambersAt(layup.rows, chambers, x) };
}

/** The finished surface in the cross-section at `x`: one closed line, two through a swallow's tail, none at a tip. */
export function surfaceAt(mesh: Pick<Mesh, 'positions' | 'triangles' | 'patches'>, x: number): SurfaceLoop[] {
  return sliceMesh(mesh, { a: 1, b: 0, d: x }, [0, 1]).map(({ points, patches }) => ({
    points: points.map(([, y, z]): Point => [y, z]),
    patches,
  }));
}

/** The chambers that the cross-section at `x` passes through. */
export function chambersAt(rows: readonly Row[], chambers: readonly Chamber[], x: number): CutChamber[] {
  const rowOf = new Map(rows.map((row) => [row.id, row]));
  return chambers.flatMap((chamber): CutChamber[] => {
    const row = rowOf.get(chamber.row)!;
    const corners = chamberAcross(chamber, row.face, x);
    return corners ? [{ chamber, row, corners }] : [];
  });
}

/** Whether the two halves of a section mirror each other. */
export function isSymmetric({ chambers }: Pick<Section, 'chambers'>): boolean {
  return chambers.every(({ corners }) =>
    chambers.some((other) =>
      corners.every(([y, z]) => other.corners.some(([oy, oz]) => Math.hypot(y + oy, z - oz) < SAME)),
    ),
  );
}

/** Corners this near to one another, mm, are drawn as one. */
const SAME = 0.1;
