import { bentOf } from './flatness.js';
import { cutNotch } from './notch.js';
import { columnsOf, rowsOf } from './spacing.js';
import { pointsAcross, type Surface } from './surface.js';
import { sharedPoints } from './weld.js';

/**
 * The surface as a grid of points: rows across the board, nose to tail, and columns around each half from the keel over
 * the apex to the deck's centreline. Rows and columns lie as close as the surface bends, and are split until every
 * cell, measured, lies within `CHORD_ERROR` of it.
 *
 * Layout: point (row, side, column) is number `(row · 2 + side) · columns + column`; its x, y, z stand at three times
 * that number.
 */
export interface Grid {
  readonly xs: Float64Array;
  /** Places around the half-section, `v` of `Section`. */
  readonly vs: Float64Array;
  readonly rows: number;
  readonly columns: number;
  /** The column of the rail apex. */
  readonly apex: number;
  readonly positions: Float64Array;
  /** For every point the number of the one that stands for it; see `weld.ts`. */
  readonly same: Uint32Array;
  /** Row from which a notch parts the two halves; `rows` where there is none. */
  readonly notchRow: number;
}

/** How far the smooth surface may lie from the mesh, mm. Every wall is reported thinner by this much. */
export const CHORD_ERROR = 0.05;

/** What is allowed between neighbouring rows and between neighbouring columns, mm, where they are first laid. */
const ROW_SAG = 0.018;
const COLUMN_SAG = 0.018;
/** What is allowed where it is measured on every cell, mm: what the middles do not show takes the rest. */
const CELL_SAG = 0.038;
/** Rows and columns are not split further than this, mm and share of a stretch: at a kink splitting would never end. */
const LEAST_ROW = 0.03;
const LEAST_COLUMN = 1 / 1024;

export function gridOf(surface: Surface): Grid {
  let vs = columnsOf(surface, COLUMN_SAG);
  let xs = rowsOf(surface, vs, ROW_SAG);
  while (true) {
    const grid = gridAt(surface, xs, vs);
    const bent = bentOf(grid, surface, CELL_SAG);
    const rows = halved(xs, bent.rows, LEAST_ROW);
    const columns = halved(vs, bent.columns, LEAST_COLUMN);
    if (rows.length === xs.length && columns.length === vs.length) return { ...grid, same: sharedPoints(grid) };
    xs = rows;
    vs = columns;
  }
}

function gridAt(surface: Surface, xs: Float64Array, vs: Float64Array): Omit<Grid, 'same'> {
  const positions = pointsOf(surface, xs, vs);
  const { notchAt } = surface.outlines[1];
  const columns = vs.length;
  const apex = vs.indexOf(2);
  const notchRow = notchAt < surface.length ? xs.indexOf(notchAt) : xs.length;
  for (let row = notchRow; row < xs.length; row++)
    for (const side of [0, 1] as const)
      cutNotch(positions, (row * 2 + side) * columns, columns, apex, surface.outlines[side].inner(xs[row]!));
  return { xs, vs, rows: xs.length, columns, apex, positions, notchRow };
}

function pointsOf(surface: Surface, xs: Float64Array, vs: Float64Array): Float64Array {
  const strands = surface.lengthwise(vs);
  const positions = new Float64Array(xs.length * 2 * vs.length * 3);
  xs.forEach((x, row) => {
    const lines = strands.at(x);
    for (const side of [0, 1] as const)
      pointsAcross(surface, side, x, lines, positions, (row * 2 + side) * vs.length * 3);
  });
  return positions;
}

/**
 * Rising places with one more in the middle after each of those numbered, where the two lie at least twice `least`
 * apart.
 */
function halved(places: Float64Array, after: ReadonlySet<number>, least: number): Float64Array {
  if (after.size === 0) return places;
  return Float64Array.from(
    [...places].flatMap((place, i) => {
      const gap = (places[i + 1] ?? place) - place;
      return after.has(i) && gap >= 2 * least ? [place, place + gap / 2] : [place];
    }),
  );
}
