import { checkCutting, sheetFor } from './checkCutting.js';
import type { CutFault } from './cutFault.js';
import { orderCuts } from './cutOrder.js';
import type { CutPart, CutStock, SawSetting } from '../nest/cutPart.js';
import type { CutPlan, CutSheet, FoamCount } from './cutPlan.js';
import { cutSums } from './cutSums.js';
import { planFoam, type CutEffort } from './foamPlan.js';
import type { Nest } from '../nest/nest.js';

/**
 * Plans how all blocks are cut from the stock: edge-to-edge cuts in at most three stages, the cheapest sheets, offcuts
 * first, the rests as large as can be. What can't be cut is left out, with a fault that says why; the rest is planned
 * still. Sizes are taken to 0.001 mm.
 * @param parts - rectangles in mm; their numbers differ
 * @param stock - what there is; prices decide where all new sheets of a foam have one, else area does
 * @throws where two parts carry one number
 */
export function cutSheets(
  parts: readonly CutPart[],
  stock: readonly CutStock[],
  asked: SawSetting,
  effort: CutEffort = {},
): CutPlan {
  const saw = { ...asked, kerf: thousandths(asked.kerf), trim: thousandths(asked.trim) };
  const checked = checkCutting(parts.map(partInThousandths), stock.map(stockInThousandths), saw);
  const faults: CutFault[] = [...checked.faults];
  const stop = deadline(effort.seconds);
  const sheets: CutSheet[] = [];
  const foams: FoamCount[] = [];
  let least = 0;
  for (const foam of new Set(checked.parts.map((part) => part.foam))) {
    const ofFoam = checked.parts.filter((part) => part.foam === foam);
    const sizes = checked.stock.filter((sheet) => sheet.foam === foam);
    const { nest, blanks, least: bound, isLeast } = planFoam(foam, ofFoam, sizes, saw, effort, stop);
    for (const { stock: index, root } of inShopOrder(nest, sizes)) {
      sheets.push(orderCuts(sheets.length + 1, sizes[index]!, root, blanks, saw));
    }
    least += bound.area;
    if (nest.missing.length === 0) foams.push({ foam, sheets: nest.sheets.length, fewest: bound.sheets, isLeast });
    for (const { part } of nest.missing.flatMap((kind) => blanks[kind]!.parts)) {
      faults.push({ kind: 'stock-used-up', part: part.id, foam, needs: sheetFor(part, saw) });
    }
  }
  const planned = new Set(sheets.flatMap(({ blanks }) => blanks.flatMap((blank) => blank.parts.map(({ id }) => id))));
  const leftOut = parts.map(({ id }) => id).filter((id) => !planned.has(id));
  return { sheets, leftOut, faults, foams, sums: cutSums(sheets, stock, least) };
}

/** Blocks down and sheets up, so that what fits as it was written fits still. */
function partInThousandths(part: CutPart): CutPart {
  const { taper } = part;
  return {
    ...part,
    length: thousandths(part.length),
    height: thousandths(part.height),
    ...(taper && { taper: { top: thousandths(taper.top), bottom: thousandths(taper.bottom) } }),
  };
}

function stockInThousandths(size: CutStock): CutStock {
  return { ...size, length: -thousandths(-size.length), width: -thousandths(-size.width) };
}

/** A size to 0.001 mm, rounded down; what a computer's sums leave over a whole number of them is nothing. */
function thousandths(mm: number): number {
  return Math.floor(mm * 1000 + SUM_LEAVES) / 1000;
}

/** In thousandths. */
const SUM_LEAVES = 1e-3;

/** Offcuts first, then sizes as listed; the fullest sheet of a size first, so that the rest ends on the last. */
function inShopOrder(nest: Nest, sizes: readonly CutStock[]) {
  const rank = (stock: number) => (sizes[stock]!.offcut ? 0 : sizes.length) + stock;
  return [...nest.sheets].sort((a, b) => rank(a.stock) - rank(b.stock) || b.value - a.value);
}

function deadline(seconds: number | undefined): () => boolean {
  if (seconds === undefined) return () => false;
  const end = performance.now() + 1000 * seconds;
  return () => performance.now() >= end;
}
