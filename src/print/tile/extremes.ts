import type { Ink } from './ink.js';

/** Lowest and highest ink within a window of fixed width, wherever it begins. */
export interface Extremes {
  /** `first` is the window's first millimetre counted from the ink's; the window may hang over both ends. */
  lowest(first: number): number;
  highest(first: number): number;
}

/**
 * Extremes of every window `width` millimetres wide, in one pass over the ink (van Herk 1992, Pattern Recognition
 * Letters 13, 517).
 */
export function extremesOf(ink: Ink, width: number): Extremes {
  const low = sliding(ink.low, width, Math.min, Infinity);
  const high = sliding(ink.high, width, Math.max, -Infinity);
  return { lowest: (first) => low(first), highest: (first) => high(first) };
}

function sliding(
  values: Float64Array,
  width: number,
  pick: (a: number, b: number) => number,
  none: number,
): (first: number) => number {
  const length = values.length + 2 * width;
  const forward = new Float64Array(length).fill(none);
  forward.set(values, width);
  const backward = forward.slice();
  // Within blocks of the window's width: the extreme from the block's beginning, and that to its end.
  for (let i = 1; i < length; i++) if (i % width !== 0) forward[i] = pick(forward[i]!, forward[i - 1]!);
  for (let i = length - 2; i >= 0; i--) if ((i + 1) % width !== 0) backward[i] = pick(backward[i]!, backward[i + 1]!);
  return (first) => {
    const from = first + width;
    if (from < 0 || from + width > length) return none;
    return pick(backward[from]!, forward[from + width - 1]!);
  };
}
