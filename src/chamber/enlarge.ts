import type { Point } from '../contour/point.js';
import { PATCHES, type Patch } from '../board/mesh.js';
import type { ChamberSpec } from '../job/job.js';
import type { Face } from '../layup/layup.js';
import { solidOf } from '../wall/solid.js';
import { onSurface, wallsOf, type Walls } from '../wall/walls.js';
import type { Chamber } from './chamber.js';
import { easedEdges, LEAN, shifted, type Carved, type Surroundings } from './carve.js';
import { leastHeight, type Edges } from './edges.js';
import { stretchOf, type Stretch } from './stretch.js';

/** How far a chamber may grow if its walls let it, face frame of its row, mm. */
export interface Limits extends Stretch {
  readonly low: number;
  readonly high: number;
  readonly depth: number;
}

/** An edge that could make a chamber larger by less than this share is left where it is. */
const WORTH = 0.005;
/** Proofs spent on one edge, and rounds over all edges: one that moves may let another move too. */
const TRIES = 10;
const ROUNDS = 4;
const HALF = 0.5;
/**
 * An edge is moved so much short of where a wall would just be met, mm: there the last bit of a machine's arithmetic
 * would decide.
 */
const SHORT = 0.001;

/** Whether a chamber, face frame of its row, keeps off everything that is not a wall. */
export type IsFree = (shape: Pick<Chamber, 'profile' | 'depth'>) => boolean;

const SIDES = ['depth', 'top', 'bottom', 'nose', 'tail'] as const;
type Side = (typeof SIDES)[number];

/**
 * Moves single edges of a chamber that stands outward, as far as all walls hold: what is drawn within the inward-moved
 * surface may stay well within the walls where one wall is much thicker than its neighbours or the surface turns
 * sharply, and depths are drawn in steps.
 *
 * @param limits how far it may go at most, when it stands as given
 * @param isFree whether a chamber is in the way of nothing else
 */
export function enlarged(
  face: Face,
  carved: Carved,
  spec: ChamberSpec,
  proof: Surroundings,
  limits: (carved: Carved) => Limits,
  isFree: IsFree,
): Carved {
  let best = carved;
  for (let round = 0; round < ROUNDS; round++) {
    const before = best;
    for (const side of SIDES) best = sideMoved(face, best, side, spec, proof, limits(best), isFree);
    if (best === before) break;
  }
  return best;
}

function sideMoved(
  face: Face,
  from: Carved,
  side: Side,
  spec: ChamberSpec,
  proof: Surroundings,
  limits: Limits,
  isFree: IsFree,
): Carved {
  const { most, size } = leeway(from, side, proof, limits);
  let best = from;
  let stands = 0;
  let fails = Infinity;
  let next = most;
  for (let attempt = 0; attempt < TRIES && Math.min(fails, most) - stands > WORTH * size; attempt++) {
    const moved = movedBy(from, side, next);
    const eased = leastHeight(moved.edges) >= spec.smallest.height ? easedEdges(moved.edges, spec) : undefined;
    const walls =
      eased &&
      isFree({ profile: eased.profile, depth: [0, moved.depth] }) &&
      wallsOf(solidOf(face, eased.profile, [0, moved.depth]), proof.trees, proof.chordError, onSurface(best.walls));
    const spare = (patch: Patch, of: Walls) => of.thickness[patch] - proof.asked[patch];
    if (walls && PATCHES.every((patch) => spare(patch, walls) >= 0)) {
      best = { ...eased, ...moved, walls };
      stands = next;
      next = (stands + Math.min(fails, most)) / 2;
      continue;
    }
    fails = next;
    // Where the wall that fails would meet what is asked if it shrank evenly; it rather shrinks ever faster, so hardly
    // before.
    const even = (patch: Patch) =>
      walls && spare(patch, walls) < 0
        ? spare(patch, best.walls) / (spare(patch, best.walls) - spare(patch, walls))
        : 1;
    const share = walls ? Math.min(...PATCHES.map(even)) : 0;
    next = stands + (share > HALF / 2 ? share : HALF) * (fails - stands) - SHORT;
  }
  return best;
}

/** How far a side may be worth moving, and what of it would be the whole of the chamber, mm. */
function leeway({ edges, profile, depth, walls }: Carved, side: Side, proof: Surroundings, limits: Limits) {
  const { from, to } = stretchOf(profile);
  const heights = profile.map(([, z]) => z);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const spare = (patch: Patch) => (walls.thickness[patch] - proof.asked[patch]) / LEAN;
  const height = leastHeight(edges);
  if (side === 'top') return { most: Math.min(spare('deck'), limits.high - high), size: height };
  if (side === 'bottom') return { most: Math.min(spare('bottom'), low - limits.low), size: height };
  if (side === 'nose') return { most: from - limits.from, size: to - from };
  if (side === 'tail') return { most: limits.to - to, size: to - from };
  return { most: Math.min(spare('rail'), limits.depth - depth), size: depth };
}

function movedBy({ edges, depth }: Carved, side: Side, by: number): { edges: Edges; depth: number } {
  if (side === 'depth') return { edges, depth: depth + by };
  if (side === 'top') return { edges: shifted(edges, by, 0), depth };
  if (side === 'bottom') return { edges: shifted(edges, 0, -by), depth };
  const drawnOn = (edge: readonly Point[]): Point[] =>
    side === 'nose'
      ? [onward(edge[0]!, edge[1]!, -by), ...edge.slice(1)]
      : [...edge.slice(0, -1), onward(edge[edge.length - 1]!, edge[edge.length - 2]!, by)];
  return { edges: { top: drawnOn(edges.top), bottom: drawnOn(edges.bottom) }, depth };
}

/** The end of an edge, drawn on in its own direction. */
function onward([s, z]: Point, [s2, z2]: Point, by: number): Point {
  return [s + by, z + (by * (z - z2)) / (s - s2)];
}
