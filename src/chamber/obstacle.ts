import type { Point } from '../contour/point.js';
import { toFace } from '../layup/frame.js';
import type { Face, Row } from '../layup/layup.js';
import type { Stretch } from './stretch.js';

/** A region that chambers keep out of: a keep-out, or glue with the clearance around it. */
export type Obstacle = PlanObstacle | RowObstacle;

interface Named {
  readonly name: string;
  readonly why: 'keep-out' | 'dot';
}

/** Drawn on the plan, board frame, mm. */
export interface PlanObstacle extends Named {
  readonly on: 'plan';
  /** Corners of a closed outline. */
  readonly outline: readonly Point[];
  /** Where it reaches in from the deck or the bottom only: points of its inner end, close together. */
  readonly end?: { readonly from: 'deck' | 'bottom'; readonly points: readonly (readonly [number, number, number])[] };
}

/** Drawn on the face of one row, in its frame, mm. */
export interface RowObstacle extends Named {
  readonly on: 'row';
  readonly row: string;
  readonly blocked: Blocked;
  /** Chambers that end before this depth do not meet it. */
  readonly beyond: number;
}

/**
 * A rectangle on a face that no chamber may enter, mm; `low` and `high` are infinite where nothing passes under or over
 * it.
 */
export interface Blocked extends Stretch {
  readonly low: number;
  readonly high: number;
}

/** How far around a chamber the inner end of an obstacle is asked for, mm: more than its points lie apart. */
const AROUND = 12;
/** What only touches a chamber by less, mm, does not meet it. */
const TOUCH = 1e-9;

/**
 * The rectangle in which an obstacle blocks chambers open from the row's face down to `deep`; undefined when they pass
 * it by.
 */
export function blockedBy(obstacle: Obstacle, row: Row, deep: number): Blocked | undefined {
  if (obstacle.on === 'row')
    return obstacle.row === row.id && deep > obstacle.beyond + TOUCH ? obstacle.blocked : undefined;
  const { outline, end } = obstacle;
  const stretch = stretchWithin(outline, row.face, deep);
  if (!stretch) return undefined;
  if (!end) return { ...stretch, low: -Infinity, high: Infinity };
  const heights = heightsNear(end.points, row.face, deep);
  return end.from === 'deck'
    ? { ...stretch, low: heights.length > 0 ? Math.min(...heights) : -Infinity, high: Infinity }
    : { ...stretch, low: -Infinity, high: heights.length > 0 ? Math.max(...heights) : Infinity };
}

function heightsNear(points: readonly (readonly [number, number, number])[], face: Face, deep: number): number[] {
  return points.flatMap(([x, y, z]) => {
    const [, t] = toFace(face, x, y);
    return t > -AROUND && t < deep + AROUND ? [z] : [];
  });
}

/** The stretch of `s` in which an outline lies between `t` = 0 and `deep`: each edge clipped to that strip. */
function stretchWithin(outline: readonly Point[], face: Face, deep: number): Stretch | undefined {
  let from = Infinity;
  let to = -Infinity;
  let shallow = Infinity;
  let furthest = -Infinity;
  const [x, y] = outline[outline.length - 1]!;
  let [s0, t0] = toFace(face, x, y);
  for (const [x, y] of outline) {
    const [s1, t1] = toFace(face, x, y);
    if (Math.max(t0, t1) >= 0 && Math.min(t0, t1) <= deep) {
      const at0 = levelAt(s0, t0, s1, t1, deep);
      const at1 = levelAt(s1, t1, s0, t0, deep);
      from = Math.min(from, at0, at1);
      to = Math.max(to, at0, at1);
      shallow = Math.min(shallow, t0, t1);
      furthest = Math.max(furthest, t0, t1);
    }
    [s0, t0] = [s1, t1];
  }
  return to - from > TOUCH && furthest > TOUCH && shallow < deep - TOUCH ? { from, to } : undefined;
}

/**
 * Where an edge that comes from a corner enters the strip between `t` = 0 and `deep`: the corner's own `s` where it
 * lies within.
 */
function levelAt(s0: number, t0: number, s1: number, t1: number, deep: number): number {
  const level = Math.min(deep, Math.max(0, t0));
  return level === t0 ? s0 : s0 + ((level - t0) / (t1 - t0)) * (s1 - s0);
}
