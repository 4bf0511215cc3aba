import { printLength } from '../../length/length.js';
import { roundedAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import type { GluePlan } from '../glue/batches.js';
import { blankSizeOf } from '../blankSize.js';
import type { Block } from '../block.js';
import type { CutPart, CutStock } from '../nest/cutPart.js';
import type { CutPlan } from './cutPlan.js';
import { cutSheets } from './cutSheets.js';
import type { CutEffort } from './foamPlan.js';
import { gluingOf, type ToCut } from '../glue/gluing.js';
import { makingOf, type Making } from './making.js';
import { sawnFrom, type Sawn } from '../sawn.js';

/** How the blocks of a plan are cut and glued in. */
export interface Cutting {
  readonly cuts: readonly BlockCut[];
  /** What is sawn: a rectangle for each layer of each block. */
  readonly parts: readonly CutPart[];
  /** Absent where the job lists no sheets. */
  readonly sheets?: CutPlan;
  readonly glue: GluePlan;
}

/** How one block is made. */
export interface BlockCut {
  readonly block: Block;
  readonly sawn: Sawn;
  /** Absent where the job lists no sheets. */
  readonly making?: Making;
  /** Names of its layers on the cut sheets; the block's own number where there is one. */
  readonly parts: readonly string[];
}

/**
 * Plans how the blocks are cut from the job's sheets and in which batches they are glued. A search of up to a second or
 * so, so it is not a part of the plan but made when it is asked for; the same plan and rounds give the same cuts.
 */
export function cuttingOf(plan: ToCut, effort: CutEffort = {}): Cutting {
  const sawn = new Map(plan.blocks.map((block) => [block.id, sawnFrom(block.made.outline)]));
  const glue = gluingOf(plan);
  const { stock } = plan.job.blocks;
  if (stock.length === 0) {
    return { cuts: plan.blocks.map((block) => cutOf(block, sawn.get(block.id)!, undefined)), parts: [], glue };
  }
  // Where the sheets of one thickness run out, blocks are made of another.
  const refused = new Map<string, Set<number>>();
  let best: Cutting | undefined;
  for (;;) {
    const next = { ...cutFrom(plan, sawn, refused, effort), glue };
    const less = best === undefined || next.sheets.leftOut.length < best.sheets!.leftOut.length;
    if (less) best = next;
    const usedUp = next.sheets.faults.flatMap((f) => (f.kind === 'stock-used-up' ? [f.part] : []));
    const again = less && next.cuts.filter(({ parts }) => parts.some((id) => usedUp.includes(id)));
    if (!again || again.length === 0) return best!;
    for (const { block, making } of again) {
      const not = refused.get(block.id) ?? new Set<number>();
      refused.set(block.id, not.add(making!.sheet));
    }
  }
}

/** What the cut sheets call an entry of the job's list of sheets, counted from 0. */
export function stockName(index: number): string {
  return `no. ${index + 1} of the list`;
}

function cutFrom(
  plan: ToCut,
  sawn: ReadonlyMap<string, Sawn>,
  refused: ReadonlyMap<string, ReadonlySet<number>>,
  effort: CutEffort,
) {
  const { stock, kerf, trim, keep, grain } = plan.job.blocks;
  const cuts = plan.blocks.map((block) => {
    const lies = sawn.get(block.id)!;
    const part = partOf(lies, plan.job.units, !grain);
    const not = refused.get(block.id);
    const all = stock.map(({ thickness }) => thickness);
    const allowed = stock.filter(({ thickness }) => !not?.has(thickness));
    const fitting = allowed.filter(
      ({ length, width }) =>
        isWithin(part, length - 2 * trim, width - 2 * trim) ||
        (part.mayTurn && isWithin(part, width - 2 * trim, length - 2 * trim)),
    );
    const thicknesses = [fitting, allowed].find((list) => list.length > 0)?.map(({ thickness }) => thickness) ?? all;
    // What comes off is told beside the thickness as it is told.
    return {
      ...cutOf(block, lies, makingOf(roundedAs('block', block.made.thickness, plan.job.units), thicknesses)),
      part,
    };
  });
  const foam = (thickness: number) => `${plan.job.fill.name}, ${printLength(thickness, plan.job.units)} thick`;
  const parts = cuts.flatMap(({ parts: ids, making, part }) =>
    ids.map((id): CutPart => ({ ...part, id, foam: foam(making!.sheet) })),
  );
  const listed = stock.map(({ thickness, ...size }, i): CutStock => ({
    ...size,
    id: stockName(i),
    foam: foam(thickness),
  }));
  return {
    cuts: cuts.map(({ block, sawn: lies, making, parts: ids }): BlockCut => ({
      block,
      sawn: lies,
      ...(making && { making }),
      parts: ids,
    })),
    parts,
    sheets: cutSheets(parts, listed, { kerf, trim, keep }, effort),
  };
}

function cutOf(block: Block, sawn: Sawn, making: Making | undefined): BlockCut {
  const layers = making?.layers ?? 1;
  const parts = layers === 1 ? [block.id] : Array.from({ length: layers }, (_, i) => `${block.id}/${i + 1}`);
  return { block, sawn, ...(making && { making }), parts };
}

function partOf(sawn: Sawn, units: Units, mayTurn: boolean): Omit<CutPart, 'id' | 'foam'> {
  return { ...blankSizeOf(sawn, units), mayTurn, ...(sawn.sides && { taper: sawn.sides.taper }) };
}

function isWithin(part: { readonly length: number; readonly height: number }, length: number, width: number): boolean {
  return part.length <= length && part.height <= width;
}
