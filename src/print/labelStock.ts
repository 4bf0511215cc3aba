import table from '../../templates/labels.json' with { type: 'json' };
import type { LabelStock } from './set.js';

/** The label sheets of the table; a shop adds its own to `templates/labels.json`. */
export const labelStocks: readonly LabelStock[] = table.stocks;

/** The label sheet of a name, whatever its case, or undefined. */
export const labelStockNamed = (name: string): LabelStock | undefined =>
  labelStocks.find((stock) => stock.name.toLowerCase() === name.trim().toLowerCase());
