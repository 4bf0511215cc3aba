import type { Board } from '../board/board.js';
import { CHORD_ERROR } from '../board/grid.js';
import type { ChamberSpec, KeepOutSpec } from '../job/job.js';
import { depthOf, toFace } from '../layup/frame.js';
import type { Row } from '../layup/layup.js';
import { SLACK } from '../wall/thinnest.js';
import { carve, type Proof } from './carve.js';
import type { Chamber, Note } from './chamber.js';
import { momentsOf } from './contour.js';
import { areaBetween, edgesWithin, leastHeight, type Edges, type Reach } from './edges.js';
import { blockedBy, without, type Stretch } from './keepOut.js';
import { reach, roomOf, type Room } from './room.js';
import type { Shell } from './shell.js';
import { slotsOf, type Slot } from './slots.js';

/** The shell is drawn within the walls by what the mesh and the search may hide, and this allowance for straight edges, mm. */
export const SHELL_ALLOWANCE = CHORD_ERROR + SLACK + 0.06;

/** Depths looked at, mm apart: through a piece the room changes little, toward a rail it closes fast. */
const THROUGH_LAYER = 12;
const BLIND_LAYER = 5;
/** Two corners take no more than this many cutter diameters of an edge, also where they are sharper than square. */
const CORNER_ROOM = 1.25;
/** A chamber drawn in by less than this, mm, is not worth a word. */
const TRIMMED = 2;

/** What a row is carved from. */
export interface RowSetting {
  readonly board: Board;
  readonly shell: Shell;
  readonly proof: Proof;
  readonly spec: ChamberSpec;
  readonly keepOuts: readonly KeepOutSpec[];
}

/** A way to fill one slot: a depth and, beside each other, the profiles that fit. */
interface Filling {
  readonly depth: number;
  readonly parts: readonly Edges[];
  readonly volume: number;
  /** Names of the keep-outs that took something away. */
  readonly blockers: readonly string[];
}

/** The chambers of one row, nose to tail, and what must be said about its places. */
export function chambersOf(row: Row, setting: RowSetting): { chambers: Chamber[]; notes: Note[] } {
  const { board, spec } = setting;
  const far = farSide(row);
  const limit = (s: number) => (far ? far.at + far.slope * s - (row.end === 'solid' ? spec.floor : 0) : Infinity);
  const deepest = Math.min(Math.max(limit(0), limit(board.length)), furthest(row, board));
  const layer = deepest / Math.ceil(deepest / (row.end === 'rail' ? BLIND_LAYER : THROUGH_LAYER));
  const chambers: Chamber[] = [];
  const notes: Note[] = [];
  if (!(deepest >= spec.smallest.depth)) {
    notes.push({ kind: 'solid', where: row.id, why: 'shallow', by: [] });
    return { chambers, notes };
  }
  const room = roomOf(board.grid, setting.shell, row.face, deepest, layer);

  for (const slot of slotsOf(row, spec, board.length)) {
    const id = `${row.id}-${String(slot.place).padStart(2, '0')}`;
    const stretch = withinEnds(slot, row, board.length, spec);
    const filling = stretch && bestFilling(stretch, row, room, limit, setting);
    if (!filling) {
      notes.push({ kind: 'solid', where: id, ...whySolid(stretch, row, setting) });
      continue;
    }
    const carved = filling.parts.map((edges) => carve(row.face, edges, filling.depth, spec, setting.proof));
    carved.forEach((result, i) => {
      const name = filling.parts.length > 1 ? id + String.fromCharCode(97 + i) : id;
      if ('failed' in result) {
        notes.push({ kind: 'solid', where: name, why: result.failed, by: [] });
        return;
      }
      const { thickness, places } = result.walls;
      const { area, x: centre } = momentsOf(result.contour);
      chambers.push({
        id: name,
        row: row.id,
        place: slot.place,
        contour: result.contour,
        profile: result.profile,
        depth: [0, result.depth],
        wall: thickness,
        at: { deck: places.deck.onSurface, bottom: places.bottom.onSurface, rail: places.rail.onSurface },
        volume: (area * Math.min(result.depth, limit(centre))) / 1e6,
      });
    });
    notes.push(...said(id, slot, stretch, filling));
  }
  return { chambers, notes };
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

/** Of all depths the one that takes most out. */
function bestFilling(
  stretch: Stretch,
  row: Row,
  room: Room,
  limit: (s: number) => number,
  setting: RowSetting,
): Filling | undefined {
  const { spec } = setting;
  // A row routed right through goes as deep as its far face anywhere along the chamber; a blind one stays before what ends it.
  const limits = [limit(stretch.from), limit(stretch.to)];
  const end = row.end === 'face' ? Math.max(...limits) : Math.min(...limits);
  let best: Filling | undefined;
  for (let j = 1; j < room.layers; j++) {
    const depth = Math.min(j * room.layer, end);
    if (depth < spec.smallest.depth) continue;
    const filling = fillingAt(stretch, row, room, j, depth, setting);
    if (filling && filling.volume > (best?.volume ?? 0)) best = filling;
    if (j * room.layer >= end) break;
  }
  return best;
}

function fillingAt(
  stretch: Stretch,
  row: Row,
  room: Room,
  j: number,
  depth: number,
  { spec, keepOuts }: RowSetting,
): Filling | undefined {
  const blocked = blockersOf(keepOuts, row, depth, stretch);
  const parts: Edges[] = [];
  let volume = 0;
  for (const free of without(stretch, blocked)) {
    const run = longestRun(
      reachAlong(free, room, j),
      Math.max(spec.smallest.height, CORNER_ROOM * spec.cutterDiameter),
    );
    if (!run || run.s[run.s.length - 1]! - run.s[0]! < spec.smallest.length) continue;
    const edges = edgesWithin(spec.shape, run, CORNER_ROOM * spec.cutterDiameter);
    const [from, to] = [edges.bottom[0]![0], edges.bottom[edges.bottom.length - 1]![0]];
    if (to - from < spec.smallest.length || leastHeight(edges) < spec.smallest.height) continue;
    parts.push(edges);
    volume += areaBetween(edges) * depth;
  }
  return parts.length > 0 ? { depth, parts, volume, blockers: blocked.map((b) => b.name) } : undefined;
}

/** The room's reach at the ends of a stretch and at the even steps between them. */
function reachAlong({ from, to }: Stretch, room: Room, j: number): Reach {
  const s = [from];
  for (let i = Math.floor(from / room.step) + 1; i * room.step < to; i++) s.push(i * room.step);
  s.push(to);
  return {
    s,
    top: s.map((each) => reach(room, room.top, j, each)),
    bottom: s.map((each) => reach(room, room.bottom, j, each)),
  };
}

/** The longest stretch of a reach over which it is at least so high. */
function longestRun({ s, top, bottom }: Reach, height: number): Reach | undefined {
  let best: [number, number] = [0, -1];
  let start = 0;
  for (let i = 0; i <= s.length; i++) {
    if (i < s.length && top[i]! - bottom[i]! >= height) continue;
    if (i - start > best[1] - best[0] + 1) best = [start, i - 1];
    start = i + 1;
  }
  const [from, to] = best;
  if (to <= from) return undefined;
  return { s: s.slice(from, to + 1), top: top.slice(from, to + 1), bottom: bottom.slice(from, to + 1) };
}

function whySolid(stretch: Stretch | undefined, row: Row, { spec, keepOuts }: RowSetting): Pick<Note, 'why' | 'by'> {
  if (!stretch || stretch.to - stretch.from < spec.smallest.length) return { why: 'ends', by: [] };
  const by = blockersOf(keepOuts, row, spec.smallest.depth, stretch).map((b) => b.name);
  return { why: by.length > 0 ? 'keep-out' : 'room', by };
}

/** The keep-outs that a chamber of the given depth meets within a stretch. */
function blockersOf(
  keepOuts: readonly KeepOutSpec[],
  row: Row,
  depth: number,
  stretch: Stretch,
): (Stretch & { name: string })[] {
  return keepOuts.flatMap((keepOut) => {
    const place = blockedBy(keepOut, row.face, depth);
    return place && place.to > stretch.from && place.from < stretch.to ? [{ name: keepOut.name, ...place }] : [];
  });
}

/** What a builder must know of a slot that is not filled from end to end. */
function said(id: string, slot: Slot, stretch: Stretch, { parts, blockers }: Filling): Note[] {
  const notes: Note[] = [];
  const by = blockers;
  if (parts.length > 1) notes.push({ kind: 'split', where: id, why: 'keep-out', by });
  const from = Math.min(...parts.map((p) => p.bottom[0]![0]));
  const to = Math.max(...parts.map((p) => p.bottom[p.bottom.length - 1]![0]));
  const shorter = slot.to - slot.from - (to - from);
  if (shorter > TRIMMED) {
    const atEnds = stretch.from > slot.from + TRIMMED || stretch.to < slot.to - TRIMMED;
    notes.push({ kind: 'trimmed', where: id, why: by.length > 0 ? 'keep-out' : atEnds ? 'ends' : 'room', by, shorter });
  }
  return notes;
}
