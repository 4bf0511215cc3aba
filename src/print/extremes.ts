import type { Ink } from './ink.js';

/** Lowest and highest ink between two millimetres, `from` inclusive to `to` exclusive, at once for any span. */
export interface Extremes {
  lowest(from: number, to: number): number;
  highest(from: number, to: number): number;
}

/** Tables of the extremes over spans of 1, 2, 4, … millimetres (the sparse table of Bender and Farach-Colton 2000, section 3). */
export function extremesOf(ink: Ink): Extremes {
  const low = tables(ink.low, Math.min);
  const high = tables(ink.high, Math.max);
  return {
    lowest: (from, to) => query(low, Math.min, from, to),
    highest: (from, to) => query(high, Math.max, from, to),
  };
}

type Pick = (a: number, b: number) => number;

function tables(values: Float64Array, pick: Pick): Float64Array[] {
  const out = [values];
  for (let span = 1; 2 * span <= values.length; span *= 2) {
    const before = out[out.length - 1]!;
    const next = new Float64Array(values.length - 2 * span + 1);
    for (let i = 0; i < next.length; i++) next[i] = pick(before[i]!, before[i + span]!);
    out.push(next);
  }
  return out;
}

function query(table: readonly Float64Array[], pick: Pick, from: number, to: number): number {
  const level = 31 - Math.clz32(to - from);
  const row = table[level]!;
  return pick(row[from]!, row[to - (1 << level)]!);
}
