import type { Layer } from '../../sheet/drawing.js';

/** How a line is drawn: width in mm, and the dash pattern (on, off, on, off …) in mm, empty for a continuous line. */
export interface Line {
  readonly width: number;
  readonly dashes: readonly number[];
}

/** Line widths of group 0.5 (ISO 128-2:2022, 5.1 and ISO 128-24:2014, 5): wide 0.5 mm, narrow 0.25 mm. */
export const WIDE = 0.5;
export const NARROW = 0.25;
/** Frame, centring marks and grid of a sheet (ISO 5457:1999, 4.2 to 4.4), mm. */
export const FRAME = 0.7;

/**
 * What is read from a metre away, of group 0.7: what is cut along is wide, what must not be cut narrow and of another
 * kind, mm.
 */
export const BENCH_WIDE = 0.7;
export const BENCH_NARROW = 0.35;

export const wide: Line = { width: WIDE, dashes: [] };
export const narrow: Line = { width: NARROW, dashes: [] };
export const frame: Line = { width: FRAME, dashes: [] };

/** Line types of ISO 128-2:2022, clause 5.3: dash 12 d, long dash 24 d, short dash 6 d, gap 3 d, dot half a d. */
export const dashed = (width: number): Line => ({ width, dashes: [12 * width, 3 * width] });
export const chain = (width: number): Line => ({ width, dashes: [24 * width, 3 * width, 0.5 * width, 3 * width] });
export const doubleChain = (width: number): Line => ({
  width,
  dashes: [24 * width, 3 * width, 0.5 * width, 3 * width, 0.5 * width, 3 * width],
});

export const longShort = (width: number): Line => ({ width, dashes: [24 * width, 3 * width, 6 * width, 3 * width] });

/** The line of each layer. Width and type alone carry the meaning: a shop printer has no colour. */
export const lineOf: Readonly<Record<Layer, Line>> = {
  outline: wide,
  cut: { width: BENCH_WIDE, dashes: [] },
  edge: longShort(BENCH_NARROW),
  chamber: { width: BENCH_WIDE, dashes: [] },
  guide: wide,
  block: wide,
  joint: doubleChain(NARROW),
  web: narrow,
  dot: narrow,
  keepout: dashed(WIDE),
  mark: chain(NARROW),
  dimension: narrow,
  label: narrow,
};

/** All layers, in the order in which they are drawn. */
export const layers = Object.keys(lineOf) as readonly Layer[];
