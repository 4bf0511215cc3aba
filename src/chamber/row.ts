import type { Board } from '../board/board.js';
import { CHORD_ERROR } from '../board/grid.js';
import type { ChamberSpec } from '../job/job.js';
import { depthOf, toFace } from '../layup/frame.js';
import type { Row } from '../layup/layup.js';
import { SLACK } from '../wall/thinnest.js';
import type { Proof } from './carve.js';
import { carveWithin } from './carveWithin.js';
import type { Chamber, Note } from './chamber.js';
import { momentsOf } from './contour.js';
import { bestFilling } from './filling.js';
import { blockedBy, type Obstacle } from './obstacle.js';
import { noteOf } from './places.js';
import { roomOf } from './room.js';
import type { Shell } from './shell.js';
import { slotsOf, type Slot } from './slots.js';
import type { Stretch } from './stretch.js';

/** The shell is drawn within the walls by what the mesh and the search may hide, and this allowance for straight edges, mm. */
export const SHELL_ALLOWANCE = CHORD_ERROR + SLACK + 0.06;

/** Depths looked at, mm apart: through a piece the room changes little, toward a rail it closes fast. */
const THROUGH_LAYER = 12;
const BLIND_LAYER = 5;

/** What rows are carved from. */
export interface RowSetting {
  readonly board: Board;
  readonly shell: Shell;
  readonly proof: Proof;
  readonly spec: ChamberSpec;
}

/** One place of a row and what became of it: its chamber, two where it was split, or none, and what must be said about that. */
export interface Place {
  readonly slot: Slot;
  readonly chambers: readonly Chamber[];
  readonly notes: readonly Note[];
}

/** A row ready to be carved: each of its places by itself, so that one can be carved again without touching the others. */
export interface RowCarving {
  readonly row: Row;
  /** Nose to tail; none where the row is nowhere as deep as the smallest chamber. */
  readonly slots: readonly Slot[];
  carve(slot: Slot, obstacles: readonly Obstacle[]): Place;
}

export function carvingOf(row: Row, { board, shell, proof, spec }: RowSetting): RowCarving {
  const far = farSide(row);
  const limit = (s: number) => (far ? far.at + far.slope * s - (row.end === 'solid' ? spec.floor : 0) : Infinity);
  const deepest = Math.min(Math.max(limit(0), limit(board.length)), furthest(row, board));
  if (!(deepest >= spec.smallest.depth))
    return { row, slots: [], carve: (slot) => ({ slot, chambers: [], notes: [] }) };
  const layer = deepest / Math.ceil(deepest / (row.end === 'rail' ? BLIND_LAYER : THROUGH_LAYER));
  const room = roomOf(board.grid, shell, row.face, deepest, layer);

  const carve = (slot: Slot, obstacles: readonly Obstacle[]): Place => {
    const id = `${row.id}-${String(slot.place).padStart(2, '0')}`;
    const solid = (where: string, why: Note['why'], by: readonly string[] = []): Note => ({
      kind: 'solid',
      where,
      why,
      by,
    });
    const stretch = withinEnds(slot, row, board.length, spec);
    if (!stretch || stretch.to - stretch.from < spec.smallest.length)
      return { slot, chambers: [], notes: [solid(id, 'ends')] };
    const met = (deep: number) =>
      obstacles.flatMap((obstacle) => {
        const blocked = blockedBy(obstacle, row, deep);
        return blocked && blocked.to > stretch.from && blocked.from < stretch.to ? [{ obstacle, blocked }] : [];
      });
    const filling = bestFilling(stretch, endOf(stretch, row, limit), room, met, spec);
    if (!filling) {
      const inTheWay = met(spec.smallest.depth).map(({ obstacle }) => obstacle);
      const why = inTheWay[0]?.why ?? 'room';
      return { slot, chambers: [], notes: [solid(id, why, [...new Set(inTheWay.map(({ name }) => name))])] };
    }
    const chambers: Chamber[] = [];
    const notes: Note[] = [];
    filling.parts.forEach((edges, i) => {
      const name = filling.parts.length > 1 ? id + String.fromCharCode(97 + i) : id;
      const carved = carveWithin(filling, row.face, edges, filling.depth, spec, proof);
      if ('failed' in carved) {
        notes.push(solid(name, carved.failed));
        return;
      }
      const { thickness, places } = carved.walls;
      const { area, x: centre } = momentsOf(carved.contour);
      chambers.push({
        id: name,
        row: row.id,
        place: slot.place,
        contour: carved.contour,
        profile: carved.profile,
        depth: [0, carved.depth],
        wall: thickness,
        at: { deck: places.deck.onSurface, bottom: places.bottom.onSurface, rail: places.rail.onSurface },
        volume: (area * Math.min(carved.depth, limit(centre))) / 1e6,
      });
    });
    if (chambers.length === 0 && filling.parts.length > 1) notes.splice(0, notes.length, { ...notes[0]!, where: id });
    return { slot, chambers, notes: [...notes, ...noteOf(id, slot, stretch, filling, chambers)] };
  };
  return { row, slots: slotsOf(row, spec, board.length), carve };
}

/** Where the run of members ends behind the face; undefined when the rail ends it. */
function farSide(row: Row): { at: number; slope: number } | undefined {
  const last = row.members[row.members.length - 1]!;
  const joint = row.face.inward[1] > 0 ? last.right : last.left;
  return joint && depthOf(row.face, joint);
}

/** How far behind the face the board reaches, mm. */
function furthest({ face }: Row, board: Board): number {
  let deep = 0;
  for (const x of board.grid.xs) {
    const [, left] = toFace(face, x, -board.surface.outlines[0].outer(x));
    const [, right] = toFace(face, x, board.surface.outlines[1].outer(x));
    deep = Math.max(deep, left, right);
  }
  return deep;
}

/** The slot without what lies in the solid nose and tail; undefined when nothing is left. */
function withinEnds(slot: Slot, row: Row, length: number, spec: ChamberSpec): Stretch | undefined {
  const slant = row.face.along[0];
  const from = Math.max(slot.from, spec.solidNose / slant);
  const to = Math.min(slot.to, (length - spec.solidTail) / slant);
  return to > from ? { from, to } : undefined;
}

/** A row routed right through goes as deep as its far face anywhere along the chamber; a blind one stays before what ends it. */
function endOf(stretch: Stretch, row: Row, limit: (s: number) => number): number {
  const limits = [limit(stretch.from), limit(stretch.to)];
  return row.end === 'face' ? Math.max(...limits) : Math.min(...limits);
}
