import { MM_PER_FOOT, MM_PER_INCH, type Units } from '../../length/units.js';

/** Between stations of a template, and from either end to the first of the gauges, mm. */
const EVERY = { mm: 250, in: MM_PER_FOOT } as const;
const GAUGES = { mm: 500, in: 2 * MM_PER_FOOT } as const;
const ENDS = { mm: 300, in: 12 * MM_PER_INCH } as const;
/** Gauges nearer to one another than this share of their distance are one too many. */
const APART = 0.4;

/** Where templates are marked along the board, tips left out, mm from the nose. */
export function templateStations(length: number, units: Units): number[] {
  const step = EVERY[units];
  return Array.from({ length: Math.ceil(length / step) - 1 }, (_, i) => (i + 1) * step);
}

/** Where gauges are held: a foot from either end, as boards are measured, and evenly between. */
export function gaugeStations(length: number, units: Units): number[] {
  const [step, end] = [GAUGES[units], ENDS[units]];
  const even = Array.from({ length: Math.ceil(length / step) - 1 }, (_, i) => (i + 1) * step);
  const between = even.filter((x) => x - end > APART * step && length - end - x > APART * step);
  return length > 2 * end ? [end, ...between, length - end] : [length / 2];
}
