import { printLength } from './length.js';
import { printThin, THIN_STEP } from './thin.js';
import { MM_PER_INCH, type Units } from './units.js';

/**
 * Every kind of length that somebody routs, saws or sets by, and which way it is written so that more is left standing.
 * What is not listed (places of marks, stations and dots, sizes of boards and tools) is written to the nearest step by
 * `printLength`.
 */
const TOWARD_WALL = {
  /** How deep a chamber is routed, and a stop of the router. */
  depth: 'down',
  /** How deep one of two halves is routed that are to meet inside a chamber. */
  half: 'up',
  /** What a chamber or the hole in a guide takes along and across. */
  opening: 'down',
  /** Radius of a guide's corners. */
  corner: 'up',
  /** Where a chamber begins and ends, along the face from the nose. */
  noseEnd: 'up',
  tailEnd: 'down',
  /** From the deck or bottom line to the edge of a chamber. */
  skin: 'up',
  /** A finished block, and what is sawn to it. */
  block: 'down',
  /** What is there: a wall, a web, a margin, a rest. */
  there: 'down',
  /** What there must be at least: a wall asked, a blank, a cutter, a sheet. */
  needed: 'up',
  /** What is taken off: the last of it is sanded. */
  takenOff: 'down',
  /** What of the raw stock stands over the finished board. */
  over: 'down',
  /** What of it must be there at least, and stays when the rest is planed off. */
  stays: 'up',
  /** What a planer takes in one pass. */
  pass: 'down',
} as const;

export type Acted = keyof typeof TOWARD_WALL;

/** These are told by `printThin`. */
const THIN: readonly Acted[] = ['over', 'stays', 'pass'];

/** The smallest step that a length is written in, mm. */
export const WRITTEN_STEP: Readonly<Record<Units, number>> = { mm: 0.1, in: MM_PER_INCH / 16 };
/** Lengths this near to a step, mm, are on it but for a machine's arithmetic. */
const ON_STEP = 1e-6;

/**
 * Writes a length that is acted on as `printLength` does, rounded toward more wall: the one way it stands on every
 * sheet, label, screen and list.
 *
 * @param mm the length, mm
 */
export function printAs(kind: Acted, mm: number, units: Units): string {
  return (THIN.includes(kind) ? printThin : printLength)(roundedAs(kind, mm, units), units);
}

/** The same as a number, mm: what lists count in is what the papers say. */
export function roundedAs(kind: Acted, mm: number, units: Units): number {
  const step = (THIN.includes(kind) ? THIN_STEP : WRITTEN_STEP)[units];
  const steps = TOWARD_WALL[kind] === 'down' ? Math.floor((mm + ON_STEP) / step) : Math.ceil((mm - ON_STEP) / step);
  return Math.round(steps * step * 1e6) / 1e6;
}
