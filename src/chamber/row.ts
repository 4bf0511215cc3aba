import type { Board } from '../board/board.js';
import { CHORD_ERROR } from '../board/grid.js';
import type { ChamberSpec } from '../job/job.js';
import { placeName } from '../job/names.js';
import { depthOf, toFace } from '../layup/frame.js';
import type { Row } from '../layup/layup.js';
import type { Vertex } from '../length/vertex.js';
import { onSurface } from '../wall/walls.js';
import { easedEdges, type Proof } from './carve.js';
import { carveWithin } from './carveWithin.js';
import type { Chamber, Note } from './chamber.js';
import { momentsOf } from './contour.js';
import { bestFilling, type Filling, type Met } from './filling.js';
import { blockedBy, type Blocked, type Obstacle } from './obstacle.js';
import { noteOf } from './places.js';
import { roomOf } from './room.js';
import type { Shell } from './shell.js';
import { slotsOf, type Slot } from './slots.js';
import type { Stretch } from './stretch.js';

/** The shell is drawn within the walls by what the mesh may hide, and this allowance for straight edges, mm. */
export const SHELL_ALLOWANCE = CHORD_ERROR + 0.06;

/** Depths looked at, mm apart: through a piece the room changes little, toward a rail it closes fast. */
const THROUGH_LAYER = 12;
const BLIND_LAYER = 5;

/** What rows are carved from. */
export interface RowSetting {
  readonly board: Board;
  readonly shell: Shell;
  readonly proof: Proof;
  /** Where the walls of a chamber of that name were thinnest in a plan made before on the same surface. */
  readonly thinBefore: ReadonlyMap<string, Chamber['at']>;
  readonly spec: ChamberSpec;
  /** How deep the cutter comes, mm: a row that is not routed right through goes no deeper. */
  readonly reach: number;
}

/** A chamber as drawn, before its walls are proved: what it takes, face frame of its row, mm and litres. */
export type Shape = Pick<Chamber, 'row' | 'place' | 'profile' | 'depth' | 'volume'>;

/** One place of a row as it is to be filled; without a filling where it stays solid, and then `notes` says why. */
export interface Drawing {
  readonly slot: Slot;
  readonly filled?: { readonly stretch: Stretch; readonly filling: Filling };
  readonly shapes: readonly Shape[];
  readonly notes: readonly Note[];
  /** How deep it would go if the cutter came as far, mm; absent where it does. */
  readonly wouldGo?: number;
}

/** One place of a row and what became of it: its chamber, two where it was split, or none, and what must be said about that. */
export interface Place {
  readonly slot: Slot;
  readonly chambers: readonly Chamber[];
  readonly notes: readonly Note[];
  readonly wouldGo?: number;
}

/** A row ready to be carved: each of its places by itself, so that one can be carved again without touching the others. */
export interface RowCarving {
  readonly row: Row;
  /** Nose to tail; none where the row is nowhere as deep as the smallest chamber. */
  readonly slots: readonly Slot[];
  draw(slot: Slot, obstacles: readonly Obstacle[]): Drawing;
  /** Proves what was drawn and corrects it until every wall is what was asked. */
  prove(drawing: Drawing): Place;
}

export function carvingOf(row: Row, { board, shell, proof, thinBefore, spec, reach }: RowSetting): RowCarving {
  const far = farSide(row);
  const limit = (s: number) => (far ? far.at + far.slope * s - (row.end === 'solid' ? spec.floor : 0) : Infinity);
  const deepest = Math.min(Math.max(limit(0), limit(board.length)), furthest(row, board));
  if (!(deepest >= spec.smallest.depth))
    return {
      row,
      slots: [],
      draw: (slot) => ({ slot, shapes: [], notes: [] }),
      prove: ({ slot }) => ({ slot, chambers: [], notes: [] }),
    };
  const layer = deepest / Math.ceil(deepest / (row.end === 'rail' ? BLIND_LAYER : THROUGH_LAYER));
  const room = roomOf(board.grid, shell, row.face, deepest, layer);
  /** What each obstacle blocks at the full depth: every place of the row asks for it. */
  const blocks = new Map<Obstacle, Blocked | undefined>();
  const blockedAt = (obstacle: Obstacle, deep: number): Blocked | undefined => {
    if (deep !== deepest) return blockedBy(obstacle, row, deep);
    if (!blocks.has(obstacle)) blocks.set(obstacle, blockedBy(obstacle, row, deepest));
    return blocks.get(obstacle);
  };
  /** Litres that the cutter takes out of the piece. */
  const volumeOf = (contour: readonly Vertex[], depth: number) => {
    const { area, x: centre } = momentsOf(contour);
    return (area * Math.min(depth, limit(centre))) / 1e6;
  };

  const draw = (slot: Slot, obstacles: readonly Obstacle[]): Drawing => {
    const solid = (why: Note['why'], by: readonly string[] = []): Drawing => ({
      slot,
      shapes: [],
      notes: [{ kind: 'solid', where: placeName(row.id, slot.place), row: row.id, place: slot.place, why, by }],
    });
    const stretch = withinEnds(slot, row, board.length, spec);
    if (!stretch || stretch.to - stretch.from < spec.smallest.length) return solid('ends');
    const among = (those: readonly Obstacle[], deep: number): Met[] =>
      those.flatMap((obstacle) => {
        const blocked = blockedAt(obstacle, deep);
        return blocked && blocked.to > stretch.from && blocked.from < stretch.to ? [{ obstacle, blocked }] : [];
      });
    // What is not met at the full depth is met at no other.
    const near = among(obstacles, deepest).map(({ obstacle }) => obstacle);
    const met = (deep: number) => among(near, deep);
    const end = endOf(stretch, row, limit);
    const comesTo = row.end === 'face' ? Infinity : reach;
    const filling = bestFilling(stretch, Math.min(end, comesTo), room, met, spec);
    if (!filling) {
      const inTheWay = met(spec.smallest.depth).map(({ obstacle }) => obstacle);
      return solid(inTheWay[0]?.why ?? 'room', [...new Set(inTheWay.map(({ name }) => name))]);
    }
    const { depth } = filling;
    const shapes = filling.parts.flatMap((edges): Shape[] => {
      const eased = easedEdges(edges, spec);
      if (!eased) return [];
      const { contour, profile } = eased;
      return [{ row: row.id, place: slot.place, profile, depth: [0, depth], volume: volumeOf(contour, depth) }];
    });
    const deeper = depth >= comesTo ? bestFilling(stretch, end, room, met, spec) : undefined;
    const wouldGo = deeper && deeper.depth > depth ? { wouldGo: deeper.depth } : {};
    return { slot, filled: { stretch, filling }, shapes, notes: [], ...wouldGo };
  };

  const prove = ({ slot, filled, notes: said, wouldGo }: Drawing): Place => {
    if (!filled) return { slot, chambers: [], notes: said };
    const { stretch, filling } = filled;
    const { place } = slot;
    const id = placeName(row.id, place);
    const chambers: Chamber[] = [];
    const notes: Note[] = [];
    filling.parts.forEach((edges, i) => {
      const name = filling.parts.length > 1 ? id + String.fromCharCode(97 + i) : id;
      const carved = carveWithin(filling, row.face, edges, filling.depth, spec, proof, thinBefore.get(name));
      if ('failed' in carved) {
        notes.push({ kind: 'solid', where: name, row: row.id, place, why: carved.failed, by: [] });
        return;
      }
      chambers.push({
        id: name,
        row: row.id,
        place,
        contour: carved.contour,
        profile: carved.profile,
        depth: [0, carved.depth],
        wall: carved.walls.thickness,
        at: onSurface(carved.walls),
        volume: volumeOf(carved.contour, carved.depth),
      });
    });
    if (chambers.length === 0 && filling.parts.length > 1) notes.splice(0, notes.length, { ...notes[0]!, where: id });
    const all = [...notes, ...noteOf(row.id, slot, stretch, filling, chambers)];
    return { slot, chambers, notes: all, ...(wouldGo !== undefined && { wouldGo }) };
  };
  return { row, slots: slotsOf(row, spec, board.length), draw, prove };
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
  const { rows, columns, apex, positions } = board.grid;
  for (let half = 0; half < 2 * rows; half++) {
    const at = 3 * (half * columns + apex);
    const [, t] = toFace(face, positions[at]!, positions[at + 1]!);
    deep = Math.max(deep, t);
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
