import type { Vertex } from '../../contour/vertex.js';
import { partOutline } from './blank.js';
import type { CutFault, SheetSize } from './cutFault.js';
import type { CutPart, CutStock, SawSetting } from '../nest/cutPart.js';
import { ROUNDING } from '../nest/cutPart.js';

/** What can be planned, and a fault for everything that can't. */
export interface CheckedCutting {
  readonly parts: readonly CutPart[];
  readonly stock: readonly CutStock[];
  readonly faults: readonly CutFault[];
}

/**
 * Sorts out what no saw could cut, so that the rest can be planned.
 * @throws where two parts carry one number: numbers are made by the program, not by the builder
 */
export function checkCutting(parts: readonly CutPart[], stock: readonly CutStock[], saw: SawSetting): CheckedCutting {
  const seen = new Set<string>();
  for (const { id } of parts) {
    if (seen.has(id)) throw new Error(`two parts to cut are both numbered ${id}`);
    seen.add(id);
  }
  const faults: CutFault[] = sawFaults(saw);
  if (faults.length > 0) return { parts: [], stock: [], faults };
  const good = stock.filter((sheet) => {
    const reason = whyUseless(sheet, saw);
    if (reason) faults.push({ kind: 'useless-stock', stock: sheet.id, reason });
    return !reason;
  });
  const cuttable = parts.filter((part) => {
    const fault = whyNot(part, good, saw);
    if (fault) faults.push(fault);
    return !fault;
  });
  return { parts: cuttable, stock: good, faults };
}

/** The smallest sheet a block can be cut from. */
export function sheetFor({ length, height }: CutPart, { trim }: SawSetting): SheetSize {
  return { length: length + 2 * trim, width: height + 2 * trim };
}

function sawFaults({ kerf, trim, keep }: SawSetting): CutFault[] {
  const sound = (value: number) => Number.isFinite(value) && value >= 0;
  const faults: CutFault[] = [];
  if (!sound(kerf)) faults.push({ kind: 'bad-saw', what: 'kerf' });
  if (!sound(trim)) faults.push({ kind: 'bad-saw', what: 'trim' });
  if (!sound(keep.length) || !sound(keep.width)) faults.push({ kind: 'bad-saw', what: 'keep' });
  return faults;
}

function whyUseless({ length, width, count, price }: CutStock, { trim }: SawSetting) {
  if (!isSize(length) || !isSize(width)) return 'size';
  if (length <= 2 * trim || width <= 2 * trim) return 'trim';
  if (count !== undefined && !(Number.isInteger(count) && count >= 0)) return 'count';
  if (price !== undefined && !(Number.isFinite(price) && price >= 0)) return 'price';
  return undefined;
}

function whyNot(part: CutPart, stock: readonly CutStock[], saw: SawSetting): CutFault | undefined {
  const { id, foam, length, height, mayTurn } = part;
  if (!isSize(length) || !isSize(height)) return { kind: 'no-size', part: id };
  const [lowHead, lowTail, highTail, highHead] = partOutline(part) as [Vertex, Vertex, Vertex, Vertex];
  if (!(highHead.y > lowHead.y)) return { kind: 'taper-runs-out', part: id, end: 'head' };
  if (!(highTail.y > lowTail.y)) return { kind: 'taper-runs-out', part: id, end: 'tail' };
  const side = Math.min(length, height);
  if (side <= saw.kerf) return { kind: 'kerf-too-wide', part: id, kerf: saw.kerf, side };
  const needs = sheetFor(part, saw);
  const ofFoam = stock.filter((sheet) => sheet.foam === foam);
  if (ofFoam.length === 0) return { kind: 'no-stock', part: id, foam, needs };
  const lies = (sheet: CutStock, along: number, across: number) =>
    along <= sheet.length + ROUNDING && across <= sheet.width + ROUNDING;
  const fits = ofFoam.some(
    (sheet) => lies(sheet, needs.length, needs.width) || (mayTurn && lies(sheet, needs.width, needs.length)),
  );
  return fits ? undefined : { kind: 'too-large', part: id, foam, needs, mayTurn };
}

function isSize(value: number): boolean {
  return Number.isFinite(value) && value > 0;
}
