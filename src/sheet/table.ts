import type { Cell, Column, TableRow } from './pages.js';

/** Columns of a table by their titles and what stands in them. */
export function columnsOf(...columns: readonly (readonly [title: string, kind: Column['kind']])[]): Column[] {
  return columns.map(([title, kind]) => ({ title, kind }));
}

export const row = (...cells: readonly Cell[]): TableRow => ({ kind: 'row', cells });

/** A heading across a table, over the rows that follow. */
export const heading = (text: string): TableRow => ({ kind: 'heading', text });
