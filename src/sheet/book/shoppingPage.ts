import table from '../../../templates/phases.json' with { type: 'json' };
import { USUAL_LAMINATING } from '../../job/usual-glass.js';
import { printArealWeight } from '../../length/areal.js';
import { printFine } from '../../length/fine.js';
import { printLength } from '../../length/length.js';
import { printAs, roundedAs } from '../../length/rounded.js';
import { printWeight } from '../../length/weight.js';
import type { Plan } from '../../plan.js';
import type { LumberList } from '../../stock/lumber/lumberList.js';
import { glueBackGlue, glueUpGlue, jointGlue } from '../../view/jointGlue.js';
import { say, WORDS } from '../../words/say.js';
import { cuttingOnce } from '../cutting/cuttingOnce.js';
import { finishOnce } from '../finish/finishOnce.js';
import type { Cell, TableRow, TextPage } from '../pages.js';
import { columnsOf, row } from '../table.js';

const { shopping } = table.words;

/** Everything that the plan takes, in one list: stock, foam for blocks, glue, cloth, resin, what the fin needs. */
export function shoppingPage(plan: Plan): TextPage {
  const { columns } = shopping;
  const rows = [...stockRows(plan), ...blockRows(plan), ...glueRows(plan), ...finishRows(plan), ...finRows(plan)];
  const prices = rows.flatMap((each) => (each.kind === 'row' ? [each.cells[PRICE]] : []));
  const sum = prices.reduce<number>((so, cell) => so + (typeof cell === 'object' ? cell.value : 0), 0);
  return {
    kind: 'text',
    title: shopping.title,
    isTight: true,
    blocks: [
      { kind: 'paragraph', text: shopping.note },
      {
        kind: 'table',
        columns: columnsOf(
          [columns.what, 'text'],
          [columns.amount, 'text'],
          [columns.for, 'text'],
          [columns.price, 'number'],
          [columns.there, 'tick'],
        ),
        rows,
      },
      ...(sum > 0 ? [{ kind: 'paragraph', text: say(shopping.sum, { sum: sum.toFixed(2) }) } as const] : []),
      { kind: 'paragraph', text: shopping.cover },
    ],
  };
}

/** The column of prices. */
const PRICE = 3;

/** A line of the list; the last cell is to tick. */
const line = (what: string, amount: string, use: string, price?: number): TableRow =>
  row(what, amount, use, price === undefined ? '' : { value: price, text: price.toFixed(2) }, false as Cell);

function stockRows({ job, stock, layup, bare }: Plan): TableRow[] {
  const { units } = job;
  const length = (mm: number) => printLength(mm, units);
  const planks = (list: LumberList | undefined, words: string, use: string): TableRow[] => {
    const alike = new Map<number, LumberList['planks'][number][]>();
    for (const plank of list?.planks ?? []) alike.set(plank.size, [...(alike.get(plank.size) ?? []), plank]);
    return [...alike.values()].map((same) => {
      const [{ plank }] = same as [(typeof same)[number]];
      const size = `${length(plank.thickness)} × ${length(plank.width)} × ${length(plank.length)}`;
      const price = plank.price === undefined ? undefined : plank.price * same.length;
      const named = { wood: plank.material.name, foam: plank.material.name, size: plank.nominal ?? size };
      return line(
        say(words, named),
        say(shopping.pieces, { count: same.length, size: length(plank.length) }),
        use,
        price,
      );
    });
  };
  // Where the job lists no stock, the finished volumes are all that is known.
  const loose = (kind: 'strip' | 'stringer', words: string, use: string): TableRow[] => {
    const litres = new Map<string, number>();
    layup.members.forEach(({ kind: of, material }, m) => {
      if (of === kind) litres.set(material.name, (litres.get(material.name) ?? 0) + bare.members[m]!.amount);
    });
    return [...litres].map(([name, volume]) =>
      line(say(words, { foam: name, wood: name }), say(shopping.litres, { litres: volume.toFixed(1) }), use),
    );
  };
  const { strips, stringers } = shopping.for;
  return [
    ...(job.stock?.blank ? [line(shopping.blank, shopping.one, strips, job.stock.blank.price)] : []),
    ...planks(stock?.billets, shopping.billet, strips),
    ...(stock?.blank || stock?.billets ? [] : loose('strip', shopping.stripFoam, strips)),
    ...planks(stock?.lumber, shopping.lumber, stringers),
    ...(stock?.lumber ? [] : loose('stringer', shopping.stripWood, stringers)),
  ];
}

function blockRows(plan: Plan): TableRow[] {
  const { blocks, job } = plan;
  if (blocks.length === 0) return [];
  const { sheets } = cuttingOnce(plan);
  const use = shopping.for.blocks;
  if (!sheets) {
    const litres = blocks.reduce((sum, { volume }) => sum + volume, 0).toFixed(1);
    return [line(say(shopping.foam, { foam: job.fill.name }), say(shopping.litres, { litres }), use)];
  }
  const alike = new Map<string, (typeof sheets.sheets)[number][]>();
  for (const sheet of sheets.sheets) alike.set(sheet.stock, [...(alike.get(sheet.stock) ?? []), sheet]);
  const { price } = sheets.sums;
  return [...alike.values()].map((same) => {
    const [{ foam, length, width }] = same as [(typeof same)[number]];
    const size = `${printLength(length, job.units)} × ${printLength(width, job.units)}`;
    const its = alike.size === 1 ? price : undefined;
    return line(say(shopping.sheet, { foam, size }), say(shopping.whole, { count: same.length }), use, its);
  });
}

function glueRows(plan: Plan): TableRow[] {
  const { job, layup, blocks } = plan;
  const { units } = job;
  const joints = (kind: 'bonded' | 'dotted') => layup.joints.filter((joint) => joint.kind === kind).map(({ id }) => id);
  const of = (words: string, kind: 'bonded' | 'dotted', grams: number): TableRow[] => {
    const ids = joints(kind);
    if (ids.length === 0) return [];
    return [
      line(words, printWeight(grams / 1000, units), say(shopping.for.joints, { joints: ids.join(WORDS.joinWith) })),
    ];
  };
  const { glue } = cuttingOnce(plan).glue;
  return [
    ...of(shopping.blankGlue, 'bonded', jointGlue(plan, 'bonded', glueUpGlue)),
    ...of(shopping.dotGlue, 'dotted', jointGlue(plan, 'dotted', glueUpGlue)),
    ...of(shopping.backGlue, 'dotted', jointGlue(plan, 'dotted', glueBackGlue)),
    ...(blocks.length > 0 ? [line(shopping.blockGlue, printWeight(glue / 1000, units), shopping.for.blocks)] : []),
  ];
}

function finishRows(plan: Plan): TableRow[] {
  const { laminating = USUAL_LAMINATING, units, fittings = [] } = plan.job;
  const { cloths, resin } = finishOnce(plan);
  const use = shopping.for.finish;
  return [
    ...cloths.map(({ cloth, length }) =>
      line(
        say(shopping.cloth, {
          cloth: printArealWeight(cloth, units),
          width: printLength(laminating.clothWidth, units),
        }),
        printLength(roundedAs('needed', length, units), units, 'feet'),
        use,
      ),
    ),
    ...(resin > 0 ? [line(shopping.resin, printWeight(resin, units), use)] : []),
    ...fittings.map(({ name }) => line(say(shopping.fitting, { name }), shopping.one, shopping.for.fittings)),
  ];
}

function finRows({ fins, job }: Plan): TableRow[] {
  const { units, laminating = USUAL_LAMINATING } = job;
  const size = (length: number, width: number) =>
    `${printAs('needed', length, units)} × ${printAs('needed', width, units)}`;
  return fins.flatMap(({ spec, panel, blank, base, standing }) => {
    const use = say(shopping.for.fin, { fin: spec.name });
    const count = standing.length;
    const pieces = (each: number, of: string) => say(shopping.pieces, { count: each * count, size: of });
    const resin = ((panel?.resin ?? 0) + (base?.resin ?? 0)) * (1 + laminating.loss) * count;
    const sides = spec.build!.section === 'symmetric' ? 2 : 1;
    return [
      ...(panel
        ? [
            line(
              say(shopping.finCloth, { cloth: printArealWeight(panel.cloth, units) }),
              pieces(panel.layers, size(panel.length, panel.width)),
              use,
            ),
          ]
        : []),
      ...spec.build!.wood.map(({ material, thickness }) =>
        line(
          say(shopping.finWood, { wood: material.name, thickness: printFine(thickness, units) }),
          pieces(sides, size(blank.length, blank.width)),
          use,
        ),
      ),
      ...(base?.strips ?? []).map(({ cloth, length, width }) =>
        line(say(shopping.finStrip, { cloth: printArealWeight(cloth, units) }), pieces(2, size(length, width)), use),
      ),
      ...(base && base.fibre > 0 ? [line(shopping.rope, printWeight(base.fibre * count, units), use)] : []),
      ...(resin > 0 ? [line(shopping.resin, printWeight(resin, units), use)] : []),
    ];
  });
}
