import table from '../../../templates/labels.json' with { type: 'json' };
import { sheets, type Paper } from './paper.js';
import type { LabelStock } from '../../sheet/pages.js';

/** The label sheets of the table; a shop adds its own to `templates/labels.json`. */
export const labelStocks: readonly LabelStock[] = table.stocks;

/** The label sheet of a name, whatever its case, or undefined. */
export const labelStockNamed = (name: string): LabelStock | undefined =>
  labelStocks.find((stock) => stock.name.toLowerCase() === name.trim().toLowerCase());

/**
 * The labels that a shop with this paper has: those of the sheet itself, else those of a sheet of the same family of
 * sizes, else the first.
 */
export function labelStockFor(paper: Paper): LabelStock {
  const familyOf = (name: string): boolean => sheets.find((sheet) => sheet.name === name)?.standard === ISO_216;
  return (
    labelStocks.find(({ sheet }) => sheet === paper.name) ??
    labelStocks.find(({ sheet }) => paper.kind === 'sheet' && familyOf(sheet) === familyOf(paper.name)) ??
    labelStocks[0]!
  );
}

/** Papers that are not of this standard's sizes are American: as are the labels beside them. */
const ISO_216 = 'ISO 216';
