import type { Point } from '../contour/point.js';
import { spanAt } from '../contour/span.js';
import type { Patch } from '../board/mesh.js';
import type { Chamber } from '../chamber/chamber.js';
import type { Layup, Row } from '../layup/layup.js';
import type { Board } from '../board/board.js';
import { nearest, type Gap } from './gap.js';
import { sliceMesh } from './slice.js';

/** What of a chamber a cut shows. */
type Pocket = Pick<Chamber, 'row' | 'profile' | 'depth'>;

/** A board with its chambers; a `Plan` is one. */
export interface Sectioned<C extends Pocket> {
  readonly board: Pick<Board, 'mesh'>;
  readonly layup: Pick<Layup, 'rows'>;
  readonly chambers: readonly C[];
}

/** The board cut across at one distance from the nose: `[y, z]`, mm, right side on the right, as seen from the tail. */
export interface Section<C extends Pocket = Chamber> {
  readonly x: number;
  readonly loops: readonly { readonly points: readonly Point[]; readonly patches: readonly Patch[] }[];
  readonly chambers: readonly CutChamber<C>[];
}

/** What the cut shows of a chamber, counter-clockwise. */
export interface CutChamber<C extends Pocket = Chamber> {
  readonly chamber: C;
  readonly row: Row;
  readonly corners: readonly Point[];
}

/**
 * Points along a chamber's depth at which a cut slanting through it is taken; a cut square to its face needs the two
 * ends only.
 */
const SAMPLES = 8;

/**
 * For paper and screen: the mesh that the walls were proved against, cut at `x`, mm from the nose; empty beyond the
 * tips.
 */
export function sectionAt<C extends Pocket>({ board, layup, chambers }: Sectioned<C>, x: number): Section<C> {
  const loops = sliceMesh(board.mesh, { a: 1, b: 0, d: x }, [0, 1]).map(({ points, patches }) => ({
    points: points.map(([, y, z]): Point => [y, z]),
    patches,
  }));
  const rows = new Map(layup.rows.map((row) => [row.id, row]));
  const cut = chambers.flatMap((chamber): CutChamber<C>[] => {
    const row = rows.get(chamber.row)!;
    const corners = cutAcross(chamber, row, x);
    if (!corners) return [];
    return [{ chamber, row, corners }];
  });
  return { x, loops, chambers: cut };
}

/**
 * The walls around an outline in the plane of the cut, mm: toward deck and bottom, and toward the rail where it ends
 * the row. A wall is absent where the cut has none of that patch.
 */
export function wallsInPlane(
  { loops }: Pick<Section, 'loops'>,
  corners: readonly Point[],
  row: Row,
): Partial<Record<Patch, Gap>> {
  const patches: Patch[] = row.end === 'rail' ? ['deck', 'bottom', 'rail'] : ['deck', 'bottom'];
  return Object.fromEntries(
    patches.flatMap((patch) => {
      const gap = nearest(
        corners,
        loops.flatMap((loop) => stretchesOf(loop, patch)),
      );
      return gap ? [[patch, gap]] : [];
    }),
  );
}

/** Whether the two halves of a section mirror each other. */
export function isSymmetric({ chambers }: Section): boolean {
  return chambers.every(({ corners }) =>
    chambers.some((other) =>
      corners.every(([y, z]) => other.corners.some(([oy, oz]) => Math.hypot(y + oy, z - oz) < SAME)),
    ),
  );
}

/** Corners this near to one another, mm, are drawn as one. */
const SAME = 0.1;

function stretchesOf({ points, patches }: Section['loops'][number], patch: Patch): [Point, Point][] {
  return points.flatMap((point, i): [Point, Point][] =>
    patches[i] === patch ? [[point, points[(i + 1) % points.length]!]] : [],
  );
}

/**
 * The outline of a chamber in the plane across the board at `x`; undefined where the plane passes it by. A flared face
 * slants through it.
 */
export function cutAcross(
  { profile, depth }: Pick<Chamber, 'profile' | 'depth'>,
  { face }: Pick<Row, 'face'>,
  x: number,
): Point[] | undefined {
  const { origin, along, inward } = face;
  const low: Point[] = [];
  const high: Point[] = [];
  const steps = inward[0] === 0 ? 1 : SAMPLES;
  for (let i = 0; i <= steps; i++) {
    const t = depth[0] + ((depth[1] - depth[0]) * i) / steps;
    const s = (x - origin[0] - t * inward[0]) / along[0];
    const span = spanAt(profile, s);
    if (!span) continue;
    const y = origin[1] + s * along[1] + t * inward[1];
    low.push([y, span[0]]);
    high.push([y, span[1]]);
  }
  if (low.length < 2) return undefined;
  const around = [...low, ...high.reverse()];
  return inward[1] > 0 ? around : around.reverse();
}
