import words from '../../../templates/cutting.json' with { type: 'json' };
import { cutFinding } from '../../block/cut/cutFinding.js';
import type { CutPlan, CutSheet, FoamCount } from '../../block/cut/cutPlan.js';
import type { Cutting } from '../../block/cut/cutting.js';
import { sayFinding } from '../../finding/say.js';
import { sizesOf } from '../../block/sizes.js';
import { counted } from '../../length/counted.js';
import { printLength } from '../../length/length.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import { cutSheetDrawings } from './cutSheet.js';
import { cutList, fenceTable, makingTable, sizesTable } from './cutTables.js';
import type { DocumentPage, PageSize, TextBlock, TextPage } from '../pages.js';
import { say } from '../../words/say.js';

/**
 * What is cut from what: sums and findings, each sheet drawn, the cuts in order, how each block is made.
 */
export function cutPages(plan: Plan, cutting: Cutting, page?: PageSize): DocumentPage[] {
  const sheets = cutting.sheets?.sheets ?? [];
  return [
    summary(plan, cutting.sheets),
    ...sheets
      .flatMap((sheet) => cutSheetDrawings(plan, sheet, page))
      .map((drawing): DocumentPage => {
        return { kind: 'figure', title: drawing.title, drawing: { ...drawing, notes: [] }, notes: drawing.notes };
      }),
    ...(sheets.length > 0 ? [cutList(plan, sheets)] : []),
    makingTable(plan, cutting),
  ];
}

/** The same cuts for those who saw all of one setting at once, and the blocks by size: beside what is needed. */
export const cutTables = (plan: Plan, { sheets }: Cutting): DocumentPage[] => [
  ...(sheets && sheets.sheets.length > 0 ? [fenceTable(plan, sheets.sheets)] : []),
  sizesTable(plan),
];

function summary(plan: Plan, sheets: CutPlan | undefined): TextPage {
  const { title, intro, noStock, how, howHeading, fit, corners } = words.summary;
  const { blocks, units } = plan.job;
  const print = (mm: number) => printLength(mm, units);
  const kind = blocks.fit === 0 ? 'exact' : blocks.fit < 0 ? 'clearance' : 'oversize';
  const values = {
    count: plan.blocks.length,
    sizes: sizesOf(plan.blocks, units).length,
    fit: say(fit[kind], { by: fine(Math.abs(blocks.fit), units) }),
    corners: corners[blocks.corners],
    kerf: print(blocks.kerf),
    trim: print(blocks.trim),
  };
  return {
    kind: 'text',
    title,
    blocks: [
      { kind: 'title', text: title },
      { kind: 'paragraph', text: say(intro, values) },
      ...(sheets ? sumsOf(plan, sheets) : [{ kind: 'paragraph' as const, text: noStock }]),
      { kind: 'heading', text: howHeading },
      { kind: 'list', items: how, numbered: true },
      { kind: 'caution', ...words.cautions.saw },
    ],
  };
}

function sumsOf(plan: Plan, { sheets, foams, sums, leftOut, faults }: CutPlan): TextBlock[] {
  const { pairs, share, area, noPrice, findingsHeading } = words.summary;
  const square = (mm2: number) => (mm2 / 1e6).toFixed(2);
  const part = (mm2: number) =>
    say(share, { area: square(mm2), share: sums.sheetArea > 0 ? ((100 * mm2) / sums.sheetArea).toFixed(0) : '0' });
  const print = (mm: number) => printLength(mm, plan.job.units);
  return [
    {
      kind: 'pairs',
      pairs: [
        [pairs.sheets, sheetsInWords(sheets, print)],
        ...(foams.length > 0 ? [[pairs.bound, foams.map(boundInWords).join('; ')] as const] : []),
        [pairs.foam, say(area, { area: square(sums.sheetArea) })],
        [pairs.blocks, part(sums.blockArea)],
        [pairs.kept, part(sums.keptArea)],
        [pairs.waste, part(sums.wasteArea)],
        // Infinite where the sheets there are hold too little; the faults say so.
        ...(Number.isFinite(sums.leastSheetArea)
          ? [[pairs.least, say(area, { area: square(sums.leastSheetArea) })] as const]
          : []),
        [pairs.price, sums.price === undefined ? noPrice : sums.price.toFixed(2)],
        ...(leftOut.length > 0 ? [[pairs.leftOut, leftOut.join(', ')] as const] : []),
      ],
    },
    ...(faults.length > 0
      ? [
          { kind: 'heading' as const, text: findingsHeading },
          { kind: 'list' as const, items: faults.map((fault) => sayFinding(cutFinding(fault, plan.job.units))) },
        ]
      : []),
  ];
}

/** What is proved of how many sheets a foam takes, in words. */
export function boundInWords({ foam, sheets, fewest, isLeast }: FoamCount): string {
  const { bound } = words.summary;
  const way = sheets <= fewest ? bound.fewest : isLeast ? bound.cheapest : bound.open;
  return say(way, { foam, sheets: counted(sheets, 'sheet'), fewest });
}

/** How many sheets of which size, in words. */
export function sheetsInWords(sheets: readonly CutSheet[], print: (mm: number) => string): string {
  const kinds = new Map<string, CutSheet[]>();
  for (const sheet of sheets) {
    const key = `${sheet.foam} ${sheet.stock}`;
    kinds.set(key, [...(kinds.get(key) ?? []), sheet]);
  }
  return [...kinds.values()]
    .map((same) => {
      const { foam, length, width } = same[0]!;
      return say(words.summary.sheetsOf, { count: same.length, foam, size: `${print(length)} × ${print(width)}` });
    })
    .join('; ');
}

/** A length finer than a rule shows: inches to 1/64. */
function fine(mm: number, units: Units): string {
  if (units === 'mm') return printLength(mm, units);
  let [parts, of] = [Math.max(1, Math.round((mm / MM_PER_INCH) * 64)), 64];
  while (parts % 2 === 0 && of > 1) [parts, of] = [parts / 2, of / 2];
  return of === 1 ? `${parts} in` : `${parts}/${of} in`;
}
