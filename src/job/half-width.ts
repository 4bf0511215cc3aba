import type { OutlineSpec } from './spec/board.js';

/**
 * Half of the width at `x`, mm, by straight lines between the measured points: for telling what is off the board, not
 * for geometry. Within a few millimetres of the true curve, except at a round tip, where it is too large, so that
 * nothing on the board is refused. Not-a-number where a point could not be read.
 */
export function halfWidthAt(outline: OutlineSpec, length: number, x: number): number {
  const { nose, tail, points } = outline;
  const chain = [
    { x: 0, half: nose.kind === 'square' ? nose.half : nose.kind === 'round' ? (points[0]?.half ?? 0) : 0 },
    ...points,
    { x: length, half: 'half' in tail ? tail.half : tail.kind === 'round' ? (points.at(-1)?.half ?? 0) : 0 },
  ];
  if (chain.some((point) => Number.isNaN(point.x + point.half))) return NaN;
  const i = chain.findIndex((point) => point.x >= x);
  if (i < 0) return NaN;
  if (i === 0) return chain[0]!.half;
  const [a, b] = [chain[i - 1]!, chain[i]!];
  return a.half + ((b.half - a.half) * (x - a.x)) / (b.x - a.x);
}

/** The widest half of the board on one side, mm; not-a-number where nothing was measured. */
export function widestHalf(outline: OutlineSpec): number {
  return outline.points.length === 0 ? NaN : Math.max(...outline.points.map(({ half }) => half));
}
