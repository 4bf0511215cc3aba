import { areaOf } from '../../contour/area.js';
import type { CutStock } from '../nest/cutPart.js';
import type { CutSheet, CutSums } from './cutPlan.js';

/** What the sheets add up to. @param leastSheetArea - the area bound, mm² */
export function cutSums(sheets: readonly CutSheet[], stock: readonly CutStock[], leastSheetArea: number): CutSums {
  const sheetArea = sum(sheets.map(({ length, width }) => length * width));
  const keptArea = sum(sheets.flatMap(({ offcuts }) => offcuts.map(({ length, width }) => length * width)));
  const blocks = sheets.flatMap(({ blanks }) => blanks.flatMap(({ parts }) => parts));
  const blockArea = sum(blocks.map(({ outline }) => Math.abs(areaOf(outline))));
  const prices = sheets.map((sheet) => priceOf(sheet, stock));
  const known = prices.filter((price) => price !== undefined);
  return {
    sheetArea,
    blockArea,
    keptArea,
    wasteArea: sheetArea - keptArea - blockArea,
    ...(known.length === prices.length && { price: sum(known) }),
    leastSheetArea,
  };
}

/** An offcut without a price is paid already. */
function priceOf(sheet: CutSheet, stock: readonly CutStock[]): number | undefined {
  const size = stock.find(({ id, foam }) => id === sheet.stock && foam === sheet.foam);
  return size?.price ?? (size?.offcut ? 0 : undefined);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
