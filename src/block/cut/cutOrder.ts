import type { Vertex } from '../../contour/vertex.js';
import type { Blank } from './blank.js';
import type { CutStock, SawSetting } from '../nest/cutPart.js';
import { SAME_SIZE } from '../nest/cutPart.js';
import type { Cut, CutSheet, Offcut, PlacedBlank } from './cutPlan.js';
import { OPEN } from '../nest/region.js';
import type { Region } from '../nest/region.js';

/**
 * One nested sheet as it is worked: squared, then cut piece by piece; within a piece the wide ones first, so that cuts
 * of one fence setting follow each other.
 * @param root - the sheet without its trimmings, one saw cut added to every size
 */
export function orderCuts(
  number: number,
  stock: CutStock,
  root: Region,
  blanks: readonly Blank[],
  saw: SawSetting,
): CutSheet {
  const cuts: Cut[] = squaring(number, stock, saw);
  const placed: PlacedBlank[] = [];
  const offcuts: Offcut[] = [];
  let pieces: OpenPiece[] = [{ name: `${number}`, region: root, x: saw.trim, y: saw.trim, stage: 1 }];
  while (pieces.length > 0) {
    const next: OpenPiece[] = [];
    for (const piece of pieces) next.push(...cutUp(piece));
    pieces = next;
  }
  return {
    number,
    stock: stock.id,
    foam: stock.foam,
    length: stock.length,
    width: stock.width,
    blanks: placed,
    cuts,
    offcuts,
  };

  /** Cuts one piece into its children; gives back those that are cut further. */
  function cutUp({ name, region, x, y, stage }: OpenPiece): OpenPiece[] {
    const { axis, free } = region;
    const whole = region.children.length === 1 && free <= SAME_SIZE;
    const further: OpenPiece[] = [];
    let at = axis === 0 ? x : y;
    const children = [...region.children].sort((a, b) => b.across - a.across);
    children.forEach((child, i) => {
      const kidName = child.kind === OPEN ? (whole ? name : nameOf(name, i)) : idsOf(blanks[child.kind]!);
      const spot = axis === 0 ? { x: at, y } : { x, y: at };
      if (child.kind === OPEN)
        further.push({ name: kidName, region: child, ...spot, stage: whole ? stage : stage + 1 });
      else placed.push(placeBlank(blanks[child.kind]!, spot, child.turned));
      const size = child.across - saw.kerf;
      if (i < children.length - 1 || free > SAME_SIZE) {
        const middle = at + size + saw.kerf / 2;
        const length = region.across - saw.kerf;
        const [from, to] =
          axis === 0 ? [point(middle, y), point(middle, y + length)] : [point(x, middle), point(x + length, middle)];
        const run = axis === 0 ? 'across' : 'along';
        cuts.push({ number: cuts.length + 1, stage, piece: name, makes: kidName, run, fence: size, from, to });
      }
      at += child.across;
    });
    keepRest(name, region, axis === 0 ? { x: at, y } : { x, y: at });
    return further;
  }

  function keepRest(piece: string, region: Region, spot: Vertex): void {
    const along = region.free - saw.kerf;
    const across = region.across - saw.kerf;
    if (!worthKeeping(along, across, saw)) return;
    const [length, width] = region.axis === 0 ? [along, across] : [across, along];
    offcuts.push({ id: `${piece} rest`, x: spot.x, y: spot.y, length, width });
  }
}

/** A piece in hand: its name, what it holds, where its corner lies on the sheet, and the stage of the next cut. */
interface OpenPiece {
  readonly name: string;
  readonly region: Region;
  readonly x: number;
  readonly y: number;
  readonly stage: number;
}

export function worthKeeping(along: number, across: number, { keep }: SawSetting): boolean {
  if (along <= 0 || across <= 0) return false;
  const short = Math.min(keep.length, keep.width) - SAME_SIZE;
  const long = Math.max(keep.length, keep.width) - SAME_SIZE;
  return Math.min(along, across) >= short && Math.max(along, across) >= long;
}

/** Four cuts that take the edges off: two along, then two across, the second of each run on the first's edge. */
function squaring(sheet: number, { length, width }: CutStock, { trim, kerf }: SawSetting): Cut[] {
  if (trim <= 0) return [];
  const near = trim - kerf / 2;
  const line = (run: Cut['run'], at: number): [Vertex, Vertex] =>
    run === 'along' ? [point(0, at), point(length, at)] : [point(at, trim), point(at, width - trim)];
  const cut = (number: number, run: Cut['run'], at: number, fence?: number): Cut => {
    const [from, to] = line(run, at);
    const name = `${sheet}`;
    return { number, stage: 0, piece: name, makes: name, run, ...(fence !== undefined && { fence }), from, to };
  };
  return [
    cut(1, 'along', near),
    cut(2, 'along', width - near, width - 2 * trim),
    cut(3, 'across', near),
    cut(4, 'across', length - near, length - 2 * trim),
  ];
}

function placeBlank(blank: Blank, at: Vertex, turned: boolean): PlacedBlank {
  const { length, height, parts, split } = blank;
  const onSheet = ({ x, y }: Vertex) => (turned ? point(at.x + height - y, at.y + x) : point(at.x + x, at.y + y));
  return {
    x: at.x,
    y: at.y,
    length: turned ? height : length,
    width: turned ? length : height,
    parts: parts.map(({ part, outline }) => ({ id: part.id, outline: outline.map(onSheet) })),
    ...(split && { split: { from: onSheet(split.from), to: onSheet(split.to), angle: split.angle } }),
  };
}

function idsOf(blank: Blank): string {
  return blank.parts.map(({ part }) => part.id).join(' + ');
}

/** `2` → `2A`, `2B` … `2Z`, `2AA`; `2A` → `2A1`, `2A2`. */
function nameOf(parent: string, index: number): string {
  if (!/^\d+$/.test(parent)) return /\d$/.test(parent) ? `${parent}.${index + 1}` : `${parent}${index + 1}`;
  let letters = '';
  for (let rest = index + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return parent + letters;
}

function point(x: number, y: number): Vertex {
  return { x, y };
}
