import { bentOf } from './flatness.js';
import { cutNotch } from './notch.js';
import { columnsOf, rowsOf } from './spacing.js';
import { pointsAcross, type Surface } from './surface.js';
import { sharedPoints } from './weld.js';
import { CHORD_ERROR, type Grid } from './grid.js';

/** What is allowed between neighbouring rows and between neighbouring columns, mm, where they are first laid. */
const ROW_SAG = 0.018;
const COLUMN_SAG = 0.018;
/** What is allowed where it is measured on every cell, mm: what the middles do not show takes the rest. */
const CELL_SAG = 0.038;
/** Rows and columns are not split further than this, mm and share of a stretch: at a kink splitting would never end. */
const LEAST_ROW = 0.03;
const LEAST_COLUMN = 1 / 1024;

/** @param chordError coarser where less will do: for raw stock, not for walls */
export function gridOf(surface: Surface, chordError = CHORD_ERROR): Grid {
  const share = chordError / CHORD_ERROR;
  let vs = columnsOf(surface, share * COLUMN_SAG);
  let xs = rowsOf(surface, vs, share * ROW_SAG);
  while (true) {
    const grid = gridAt(surface, xs, vs);
    const bent = bentOf(grid, surface, share * CELL_SAG);
    const rows = halved(xs, bent.rows, LEAST_ROW);
    const columns = halved(vs, bent.columns, LEAST_COLUMN);
    if (rows.length === xs.length && columns.length === vs.length)
      return { ...grid, same: sharedPoints(grid), chordError };
    xs = rows;
    vs = columns;
  }
}

function gridAt(surface: Surface, xs: Float64Array, vs: Float64Array): Omit<Grid, 'same' | 'chordError'> {
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
    for (const side of [0, 1] as const)
      pointsAcross(surface, side, x, strands.at(x, side), positions, (row * 2 + side) * vs.length * 3);
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
