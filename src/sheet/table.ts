import { printThin, roundedThin } from '../length/thin.js';
import type { Units } from '../length/units.js';
import { poured, printPoured } from '../length/weight.js';
import type { Cell, Column, TableRow } from './pages.js';

/** Columns of a table by their titles and what stands in them. */
export function columnsOf(...columns: readonly (readonly [title: string, kind: Column['kind']])[]): Column[] {
  return columns.map(([title, kind]) => ({ title, kind }));
}

export const row = (...cells: readonly Cell[]): TableRow => ({ kind: 'row', cells });

/** A heading across a table, over the rows that follow. */
export const heading = (text: string): TableRow => ({ kind: 'heading', text });

/** A length of a few millimetres, or one that is milled to, as `printThin` writes it. @param mm - mm */
export const thinCell = (mm: number, units: Units): Cell => ({
  value: roundedThin(mm, units),
  text: printThin(mm, units),
});

/** What is weighed out, as `printPoured` writes it. @param kg - kg */
export const pouredCell = (kg: number, units: Units): Cell => ({
  value: poured(kg, units),
  text: printPoured(kg, units),
});
