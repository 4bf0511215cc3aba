import type { Vertex } from '../../contour/vertex.js';
import type { CutStock } from '../nest/cutPart.js';
import type { CutSheet, CutSums } from './cutPlan.js';

/** What the sheets add up to. @param leastSheetArea - the area bound, mm² */
export function cutSums(sheets: readonly CutSheet[], stock: readonly CutStock[], leastSheetArea: number): CutSums {
  const sheetArea = sum(sheets.map(({ length, width }) => length * width));
  const keptArea = sum(sheets.flatMap(({ offcuts }) => offcuts.map(({ length, width }) => length * width)));
  const blocks = sheets.flatMap(({ blanks }) => blanks.flatMap(({ parts }) => parts));
  const blockArea = sum(blocks.map(({ outline }) => polygonArea(outline)));
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

/** Shoelace formula. */
function polygonArea(outline: readonly Vertex[]): number {
  const twice = outline.map((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    return a.x * b.y - b.x * a.y;
  });
  return Math.abs(sum(twice)) / 2;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
