import { acrossRow, openBeyond, type JointOnRow } from '../chamber/onRow.js';
import type { RowObstacle } from '../chamber/obstacle.js';
import type { DotSpec } from '../job/spec/dots.js';
import type { Spot } from './spot.js';

/** How one row keeps off one spot of glue. */
export interface Keep {
  readonly spot: Spot;
  readonly at: JointOnRow;
  readonly obstacle: RowObstacle;
  /** The row need not keep off as long as the spot lies wholly inside a chamber. */
  readonly swallowed: boolean;
}

/**
 * The rectangle around glue, with its clearance, that a row keeps off; drawn out to `keepOff` where a chamber may not
 * be split.
 */
export function obstacleOf(
  { name, from, to, radius }: Spot,
  at: JointOnRow,
  { clearance, may }: Pick<DotSpec, 'clearance' | 'may'>,
  keepOff: readonly [number, number] = [Infinity, -Infinity],
): RowObstacle {
  const off = radius + clearance;
  const ends = [acrossRow(at, from[0]).s, acrossRow(at, to[0]).s];
  // Passing under or over makes a chamber lower, which is a way of trimming it.
  const past = may.includes('trim');
  return {
    on: 'row',
    row: at.row.id,
    why: 'dot',
    name,
    blocked: {
      from: Math.min(Math.min(...ends) - off, keepOff[0]),
      to: Math.max(Math.max(...ends) + off, keepOff[1]),
      low: past ? Math.min(from[1], to[1]) - off : -Infinity,
      high: past ? Math.max(from[1], to[1]) + off : Infinity,
    },
    beyond: openBeyond(at, Math.min(from[0], to[0]) - off, Math.max(from[0], to[0]) + off, clearance),
  };
}

/** The middle line of glue in the frame of the row's own face. */
export function lineOnRow({ from, to }: Pick<Spot, 'from' | 'to'>, at: JointOnRow): Pick<Spot, 'from' | 'to'> {
  return { from: [acrossRow(at, from[0]).s, from[1]], to: [acrossRow(at, to[0]).s, to[1]] };
}
