import { momentsOf } from '../contour/area.js';
import type { Board } from '../board/board.js';
import { CHORD_ERROR } from '../board/grid.js';
import type { ChamberSpec } from '../job/job.js';
import { placeName } from '../job/names.js';
import type { Hints } from '../kept/hints.js';
import type { Past } from '../kept/past.js';
import { toFace } from '../layup/frame.js';
import type { Row } from '../layup/layup.js';
import type { Vertex } from '../contour/vertex.js';
import { solidOf } from '../wall/solid.js';
import { onSurface, wallsOf } from '../wall/walls.js';
import { easedEdges, type Carved, type Surroundings } from './carve.js';
import { carveWithin } from './carveWithin.js';
import type { Chamber, Note } from './chamber.js';
import type { Edges } from './edges.js';
import { enlarged, type IsFree, type Limits } from './enlarge.js';
import { bestFilling, type Ends, type Filling, type Met } from './filling.js';
import { blockedBy, type Blocked, type Obstacle } from './obstacle.js';
import { noteOf } from './places.js';
import { roomOf } from './room.js';
import type { Shell } from './shell.js';
import { slotsOf, type Slot } from './slots.js';
import { stretchOf, type Stretch } from './stretch.js';
import { farOver, farSide, goesThrough } from './through.js';

/** The shell is drawn within the walls by what the mesh may hide, and this allowance for straight edges, mm. */
export const SHELL_ALLOWANCE = CHORD_ERROR + 0.06;

/** Depths looked at, mm apart: through a piece the room changes little, toward a rail it closes fast. */
const THROUGH_LAYER = 12;
const BLIND_LAYER = 5;

/** What rows are carved from. */
export interface RowSetting {
  readonly board: Board;
  readonly shell: Shell;
  readonly proof: Surroundings;
  /** Where the walls of a chamber of that name may be thinnest: it changes nothing but the time it takes. */
  readonly thin: Hints['thin'];
  readonly spec: ChamberSpec;
  /** How deep the cutter comes, mm: a row that is not routed right through goes no deeper. */
  readonly cutterReach: number;
}

/** A chamber as drawn, before its walls are proved: what it takes, face frame of its row, mm and litres. */
export type DrawnChamber = Pick<Chamber, 'row' | 'place' | 'profile' | 'depth' | 'volume'>;

/** How a place is to be filled, and what it has along the face at that depth. */
interface Filled {
  readonly stretch: Stretch;
  readonly filling: Filling;
  /** What is met there at other depths, where that is not the same at all of them. */
  readonly passing?: (deep: number) => readonly Met[];
}

/** One place of a row as it is to be filled; without a filling where it stays solid, and then `notes` says why. */
export interface DrawnPlace {
  readonly slot: Slot;
  readonly filled?: Filled;
  readonly shapes: readonly DrawnChamber[];
  readonly notes: readonly Note[];
  /** How deep it would go if the cutter came as far, mm; absent where it does. */
  readonly wouldGo?: number;
}

/**
 * One place of a row and what became of it: its chamber, two where it was split, or none, and what must be said about
 * that.
 */
export interface RowPlace {
  readonly slot: Slot;
  readonly chambers: readonly Chamber[];
  readonly notes: readonly Note[];
  readonly wouldGo?: number;
}

/**
 * A row ready to be carved: each of its places by itself, so that one can be carved again without touching the others.
 */
export interface RowCarving {
  readonly row: Row;
  /** Nose to tail; none where the row is nowhere as deep as the smallest chamber. */
  readonly slots: readonly Slot[];
  draw(slot: Slot, obstacles: readonly Obstacle[]): DrawnPlace;
  /**
   * Proves what was drawn and corrects it until every wall is what was asked; it grows only as far as it is in the way
   * of nothing.
   */
  prove(drawing: DrawnPlace, isFree?: IsFree): RowPlace;
}

export function carvingOf(
  row: Row,
  { board, shell, proof, thin, spec, cutterReach }: RowSetting,
  past: Past,
): RowCarving {
  const far = farSide(row);
  const limit = (s: number) => (far ? far(s) - (row.end === 'solid' ? spec.floor : 0) : Infinity);
  const furthestIn = furthest(row, board);
  const deepest = Math.min(Math.max(limit(0), limit(board.length)), furthestIn);
  if (!(deepest >= spec.smallest.depth))
    return {
      row,
      slots: [],
      draw: (slot) => ({ slot, shapes: [], notes: [] }),
      prove: ({ slot }) => ({ slot, chambers: [], notes: [] }),
    };
  const layer = deepest / Math.ceil(deepest / (row.end === 'rail' ? BLIND_LAYER : THROUGH_LAYER));
  const room = past.of(roomOf, board.grid, shell, row.face, deepest, layer);
  /** What each obstacle blocks at the full depth: every place of the row asks for it. */
  const blocks = new WeakMap<Obstacle, { readonly is?: Blocked }>();
  const blockedAt = (obstacle: Obstacle, deep: number): Blocked | undefined => {
    if (deep !== deepest) return blockedBy(obstacle, row, deep);
    const known = blocks.get(obstacle);
    if (known) return known.is;
    const is = blockedBy(obstacle, row, deepest);
    blocks.set(obstacle, is ? { is } : {});
    return is;
  };
  /** Litres that the cutter takes out of the piece. */
  const volumeOf = (contour: readonly Vertex[], depth: number) => {
    const { area, x: centre } = momentsOf(contour);
    return (area * Math.min(depth, limit(centre))) / 1e6;
  };

  /** What goes through goes so far that it comes out all along, and no further. */
  const deepFor = ({ through, depth }: Filling, { bottom }: Edges): number =>
    far && through ? farOver(far, { from: bottom[0]![0], to: bottom[bottom.length - 1]![0] }).most : depth;
  /** Without the parts that go through where a flared piece is thinner than the smallest chamber is deep. */
  const deepEnough = (filling: Filling | undefined): Filling | undefined => {
    if (!filling?.through) return filling;
    const isDeep = filling.parts.map((edges) => deepFor(filling, edges) >= spec.smallest.depth);
    const parts = filling.parts.filter((_, i) => isDeep[i]);
    return parts.length > 0
      ? { ...filling, parts, stretches: filling.stretches.filter((_, i) => isDeep[i]) }
      : undefined;
  };
  const endOf = (stretch: Stretch): Ends => {
    if (!far) return { blind: Infinity };
    const { least, most } = farOver(far, stretch);
    return row.end === 'face' ? { blind: least - spec.floor, through: most } : { blind: least - spec.floor };
  };
  /** A chamber that its walls have taken back from the far face leaves the floor before it: no feather edge stands. */
  const clearOfFar = (cut: Carved, drawnDeep: number): Carved | { failed: Note['why'] } => {
    if (row.end !== 'face' || cut.depth >= drawnDeep) return cut;
    const depth = Math.min(cut.depth, endOf(stretchOf(cut.profile)).blind);
    if (depth === cut.depth) return cut;
    if (depth < spec.smallest.depth) return { failed: 'unproved' };
    const walls = wallsOf(solidOf(row.face, cut.profile, [0, depth]), proof.trees, proof.chordError);
    return { ...cut, depth, walls };
  };

  /** How far a part of a filling may grow from where it stands. */
  const limitsOf =
    ({ filling, own, passing }: Filled & { own: Stretch }) =>
    ({ profile, depth }: Carved): Limits => {
      const now = stretchOf(profile);
      const ends = solidEnds(row, board.length, spec, depth);
      const isMet = passing !== undefined && depth > filling.depth;
      const free = isMet ? now : { from: Math.max(own.from, ends.from), to: Math.min(own.to, ends.to) };
      const { low, high } = filling;
      const isOut = far && row.end === 'face' && depth >= farOver(far, now).most;
      if (isOut) return { ...stillOn(now, free, (s) => depth - far(s)), low, high, depth };
      const { blind } = endOf(now);
      const stretch = far ? stillOn(now, free, (s) => far(s) - spec.floor - depth) : free;
      const most = Math.min(blind, cutterReach, deepestBetween(now, row, board.length, spec), furthestIn);
      return { ...stretch, low, high, depth: passing ? clearTo(profile, depth, most, passing) : most };
    };

  const draw = (slot: Slot, obstacles: readonly Obstacle[]): DrawnPlace => {
    const solid = (why: Note['why'], by: readonly string[] = []): DrawnPlace => ({
      slot,
      shapes: [],
      notes: [{ kind: 'solid', where: placeName(row.id, slot.place), row: row.id, place: slot.place, why, by }],
    });
    const within = (deep: number) => withinEnds(slot, row, board.length, spec, deep);
    const stretch = within(0);
    const least = within(spec.smallest.depth);
    if (!stretch || !least || least.to - least.from < spec.smallest.length) return solid('ends');
    const among = (those: readonly Obstacle[], deep: number): Met[] =>
      those.flatMap((obstacle) => {
        const blocked = blockedAt(obstacle, deep);
        return blocked && blocked.to > stretch.from && blocked.from < stretch.to ? [{ obstacle, blocked }] : [];
      });
    // What is not met at the full depth is met at no other.
    const near = among(obstacles, deepest).map(({ obstacle }) => obstacle);
    const met = (deep: number) => among(near, deep);
    const end = endOf(stretch);
    const filling = deepEnough(
      bestFilling(within, { ...end, blind: Math.min(end.blind, cutterReach) }, room, met, spec),
    );
    if (!filling) {
      const inTheWay = met(spec.smallest.depth).map(({ obstacle }) => obstacle);
      return solid(inTheWay[0]?.why ?? 'room', [...new Set(inTheWay.map(({ name }) => name))]);
    }
    const shapes = filling.parts.flatMap((edges): DrawnChamber[] => {
      const eased = easedEdges(edges, spec);
      if (!eased) return [];
      const { contour, profile } = eased;
      const depth = deepFor(filling, edges);
      return [{ row: row.id, place: slot.place, profile, depth: [0, depth], volume: volumeOf(contour, depth) }];
    });
    const isShort = !filling.through && filling.depth >= cutterReach;
    const deeper = isShort ? bestFilling(within, end, room, met, spec) : undefined;
    const wouldGo = deeper && deeper.depth > filling.depth ? { wouldGo: deeper.depth } : {};
    const isSame = JSON.stringify(met(filling.depth)) === JSON.stringify(met(deepest));
    const filled = { stretch: within(filling.depth)!, filling, ...(!isSame && { passing: met }) };
    return { slot, filled, shapes, notes: [], ...wouldGo };
  };

  const prove = ({ slot, filled, notes: said, wouldGo }: DrawnPlace, isFree: IsFree = () => true): RowPlace => {
    if (!filled) return { slot, chambers: [], notes: said };
    const { stretch, filling } = filled;
    const { place } = slot;
    const id = placeName(row.id, place);
    const chambers: Chamber[] = [];
    const notes: Note[] = [];
    filling.parts.forEach((edges, i) => {
      const name = id + filling.letters[i]!;
      const drawnDeep = deepFor(filling, edges);
      const cut = carveWithin(filling, row.face, edges, drawnDeep, spec, proof, thin.get(name));
      const stood = 'failed' in cut ? cut : clearOfFar(cut, drawnDeep);
      const carved =
        'failed' in stood
          ? stood
          : enlarged(row.face, stood, spec, proof, limitsOf({ ...filled, own: filling.stretches[i]! }), isFree);
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
    for (const chamber of chambers) {
      if (row.end !== 'face' || goesThrough(chamber, row)) continue;
      const has = farOver(far!, stretchOf(chamber.profile)).least - chamber.depth[1];
      notes.push({ kind: 'rout', where: chamber.id, row: row.id, place, why: 'blind', by: [], has, needs: spec.floor });
    }
    if (chambers.length === 0 && filling.parts.length > 1) notes.splice(0, notes.length, { ...notes[0]!, where: id });
    const all = [...notes, ...noteOf(row.id, slot, stretch, filling, chambers, proof.asked)];
    return { slot, chambers, notes: all, ...(wouldGo !== undefined && { wouldGo }) };
  };
  return { row, slots: slotsOf(row, spec, board.length), draw, prove };
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

/**
 * The slot without what would reach into the solid nose and tail anywhere down to a depth; undefined when nothing is
 * left.
 */
function withinEnds(slot: Slot, row: Row, length: number, spec: ChamberSpec, deep: number): Stretch | undefined {
  const ends = solidEnds(row, length, spec, deep);
  const [from, to] = [Math.max(slot.from, ends.from), Math.min(slot.to, ends.to)];
  return to > from ? { from, to } : undefined;
}

/** What solid nose and tail leave of a face to chambers of a depth: on a flared joint they lean toward one of them. */
function solidEnds({ face: { along, inward } }: Row, length: number, spec: ChamberSpec, deep: number): Stretch {
  const lean = deep * inward[0];
  return {
    from: (spec.solidNose - Math.min(0, lean)) / along[0],
    to: (length - spec.solidTail - Math.max(0, lean)) / along[0],
  };
}

/** How deep a chamber over a stretch may go before it leans into the solid nose or tail, mm. */
function deepestBetween(
  { from, to }: Stretch,
  { face: { along, inward } }: Row,
  length: number,
  spec: ChamberSpec,
): number {
  if (inward[0] === 0) return Infinity;
  return inward[0] < 0
    ? (from * along[0] - spec.solidNose) / -inward[0]
    : (length - spec.solidTail - to * along[0]) / inward[0];
}

/** As much of a wider stretch as keeps what evenly rises or falls along it at 0 or more, around a stretch that does. */
function stillOn(now: Stretch, wider: Stretch, spare: (s: number) => number): Stretch {
  const end = (inner: number, outer: number) => {
    const [has, left] = [Math.max(0, spare(inner)), spare(outer)];
    return left >= 0 ? outer : inner + ((outer - inner) * has) / (has - left);
  };
  return { from: end(now.from, wider.from), to: end(now.to, wider.to) };
}

/** How near the depth is found at which a chamber meets something, mm. */
const CLOSE = 0.05;

/** How deep between two depths a chamber may go before something it passes by is in its way, mm. */
function clearTo(
  profile: Chamber['profile'],
  clear: number,
  most: number,
  met: (deep: number) => readonly Met[],
): number {
  const { from, to } = stretchOf(profile);
  const z = profile.map(([, each]) => each);
  const [bottom, top] = [Math.min(...z), Math.max(...z)];
  const isClear = (deep: number) =>
    met(deep).every(
      ({ blocked }) => blocked.from >= to || blocked.to <= from || blocked.low >= top || blocked.high <= bottom,
    );
  if (most <= clear || isClear(most)) return most;
  let [low, high] = [clear, most];
  while (high - low > CLOSE) {
    const middle = (low + high) / 2;
    if (isClear(middle)) low = middle;
    else high = middle;
  }
  return low;
}
