import type { Board } from '../board/board.js';
import type { RoutedRow } from '../job/spec/routed.js';
import type { Row } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { solidOf } from '../wall/solid.js';
import { onSurface, wallsOf } from '../wall/walls.js';
import type { Chamber, Note } from './chamber.js';
import { websOf, type Chambers } from './chambers.js';

/** Faces that are no further apart are the same one, mm: rounding of what was written. */
const SAME_FACE = 0.01;

/**
 * The chambers of a plan with those that are routed already in the places of what it would make of them now: as they
 * were planned then, their walls measured anew on the board as it is. A row that is not there any more, or whose face
 * is elsewhere, is told.
 */
export function asRouted(
  planned: Chambers,
  routed: readonly RoutedRow[],
  rows: readonly Row[],
  { mesh }: Pick<Board, 'mesh'>,
  trees: PatchTrees,
): Chambers {
  if (routed.length === 0) return planned;
  const kept = new Map<string, readonly Chamber[]>();
  const notes: Note[] = [];
  for (const made of routed) {
    const row = rows.find(({ id }) => id === made.row);
    const why = !row ? 'gone' : isSameFace(row, made) ? 'kept' : 'elsewhere';
    notes.push({ kind: 'rout', where: made.row, ...(row && { row: made.row }), why, by: [made.day] });
    if (!row || why !== 'kept') continue;
    kept.set(
      made.row,
      made.chambers.map(({ id, place, depth, volume, contour, profile }): Chamber => {
        const walls = wallsOf(solidOf(row.face, profile, depth), trees, mesh.chordError);
        return { id, row: row.id, place, depth, volume, contour, profile, wall: walls.thickness, at: onSurface(walls) };
      }),
    );
  }
  const chambers = rows.map(({ id }) => kept.get(id) ?? planned.chambers.filter((chamber) => chamber.row === id));
  return {
    ...planned,
    chambers: chambers.flat(),
    webs: chambers.flatMap(websOf),
    // What was said of places in rows that are routed is over.
    notes: [...planned.notes.filter(({ row }) => row === undefined || !kept.has(row)), ...notes],
  };
}

function isSameFace({ face }: Row, { face: then }: RoutedRow): boolean {
  const near = (a: readonly [number, number], b: readonly [number, number], by: number) =>
    Math.hypot(a[0] - b[0], a[1] - b[1]) <= by;
  return near(face.origin, then.origin, SAME_FACE) && near(face.along, then.along, 1e-5);
}
