import type { Point } from '../../contour/point.js';
import type { Board } from '../../board/board.js';
import type { LaidMember, Layup } from '../../layup/layup.js';
import { slicesOf } from '../../weigh/slices.js';
import type { MillingSpec } from '../../job/spec/stock.js';

/**
 * What a stringer or strip is milled to before the glue-up: its side view with what is left for shaping, `s` along the
 * member from the nose tip, `z` as on the board, mm.
 */
export interface Profile {
  readonly member: LaidMember;
  /** Counter-clockwise from the nose end of its lower edge. */
  readonly outline: readonly Point[];
  /** Finished bottom and deck along the member, nose to tail, within the outline. */
  readonly bottom: readonly Point[];
  readonly deck: readonly Point[];
  /** Along the member, for a millimetre along the board. */
  readonly slant: number;
  /** Across the board, mm; a member that tapers is as thick as at its thicker end. */
  readonly thickness: number;
}

/** A slope steeper than this, as at the end of an outer member, adds no more to what is left over, measured upright. */
const STEEPEST = 1;

/** @param wanted which members are milled to profiles */
export function profilesOf(
  board: Board,
  layup: Layup,
  milling: MillingSpec,
  wanted: (member: LaidMember) => boolean,
): Profile[] {
  const { xs, members, top, bottom } = slicesOf(board, layup);
  return layup.members.flatMap((member, m): Profile[] => {
    if (!wanted(member)) return [];
    const rows = Array.from(xs.keys()).filter((i) => top[i * members + m]! > bottom[i * members + m]!);
    if (rows.length < 2) return [];
    const slope = ((member.left?.slope ?? 0) + (member.right?.slope ?? 0)) / (member.left && member.right ? 2 : 1);
    const slant = Math.hypot(1, slope);
    const along = (of: Float64Array) => rows.map((i): Point => [slant * xs[i]!, of[i * members + m]!]);
    const [deck, keel] = [along(top), along(bottom)];
    // The member may begin anywhere up to the row before the first that shows it.
    const from = slant * (xs[Math.max(0, rows[0]! - 1)]! - milling.ends);
    const to = slant * (xs[Math.min(xs.length - 1, rows.at(-1)! + 1)]! + milling.ends);
    const low = widened(keel, -milling.below, from, to);
    const high = widened(deck, milling.above, from, to);
    const thickness = thicknessOf(member, board);
    return [{ member, outline: [...low, ...high.reverse()], bottom: keel, deck, slant, thickness }];
  });
}

/** A line moved up by so much, measured square to it, and drawn out level to both ends. */
function widened(line: readonly Point[], by: number, from: number, to: number): Point[] {
  const moved = line.map(([s, z], i): Point => {
    const [before, after] = [line[Math.max(0, i - 1)]!, line[Math.min(line.length - 1, i + 1)]!];
    const slope = Math.min(STEEPEST, Math.abs((after[1] - before[1]) / (after[0] - before[0])));
    return [s, z + by * Math.hypot(1, slope)];
  });
  return [[from, moved[0]![1]], ...moved, [to, moved.at(-1)![1]]];
}

function thicknessOf({ thickness, left, right }: LaidMember, { surface, grid, length }: Board): number {
  if (typeof thickness === 'number') return thickness;
  if (thickness) return Math.max(thickness.nose, thickness.tail);
  const [inner, rail] = left ? [left, surface.outlines[1]] : [right, surface.outlines[0]];
  let widest = 0;
  for (const x of [...grid.xs, length])
    widest = Math.max(widest, rail.outer(x) - Math.abs((inner?.at ?? 0) + (inner?.slope ?? 0) * x));
  return widest;
}
