import words from '../../../templates/stock.json' with { type: 'json' };
import type { MillingSpec, PlankSpec } from '../../job/spec/stock.js';
import { printLength } from '../../length/length.js';
import { printThin, roundedThin, THIN_STEP } from '../../length/thin.js';
import type { Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import type { LumberList, SawnPlank } from '../../stock/lumber/lumberList.js';
import type { Part } from '../../stock/lumber/nest.js';
import { sayStock } from '../../view/sayStock.js';
import { say } from '../../words/say.js';
import type { DocumentPage, FigurePage, TablePage } from '../pages.js';
import type { Drawing } from '../drawing.js';
import { polygon, text } from '../primitives.js';
import { columnsOf, row } from '../table.js';
import { blankMaps } from './blankMap.js';
import { blankSide } from './blankSide.js';
import { markingUp } from './markingUp.js';

const { sheet } = words;

/** What comes off the blank, what to buy, and how it is sawn. */
export function stockPages(plan: Plan): DocumentPage[] {
  const { stock, job } = plan;
  if (!stock || !job.stock) return [];
  const { blank, lumber, billets } = stock;
  const { milling } = job.stock;
  const said = sayStock(stock, job.stock, job.units).map((each) => each.trim());
  // One paragraph: its lines are short, and paper is dear.
  const inOne = `${said.join('; ')}.`;
  return [
    ...(blank
      ? [...[blankSide(plan, blank), ...blankMaps(plan, blank)].map(figure), markingUp(plan, blank, [inOne])]
      : []),
    ...(lumber
      ? [listOf(sheet.lumber, lumber, job.units), ...lumber.planks.map(sawing(sheet.plank, milling, job.units))]
      : []),
    ...(billets
      ? [
          listOf(sheet.billets, billets, job.units),
          ...billets.planks.map(sawing(sheet.billet, { ...milling, planing: 0 }, job.units)),
        ]
      : []),
  ];
}

/** The notes stand under the figure. */
function figure(drawing: Drawing): FigurePage {
  return { kind: 'figure', title: drawing.title, drawing: { ...drawing, notes: [] }, notes: drawing.notes };
}

function listOf(title: string, { planks, lacks }: LumberList, units: Units): TablePage {
  const isCounted = planks.some(({ plank }) => plank.boardFeet !== undefined);
  const money = (sum: number) => sum.toFixed(2);
  return {
    kind: 'table',
    title,
    notes: [
      sheet.listNote,
      ...(isCounted ? [sheet.feetNote] : []),
      ...(lacks.length > 0 ? [say(sheet.lacking, { parts: lacks.map(({ part }) => part).join(', ') })] : []),
    ],
    columns: [
      ...columnsOf([sheet.number, 'text'], [sheet.material, 'text'], [sheet.size, 'text'], [sheet.parts, 'text']),
      ...(isCounted
        ? [
            ...columnsOf([sheet.counted, 'text']),
            { title: sheet.feet, kind: 'number' as const, total: (sum: number) => sum.toFixed(2) },
          ]
        : []),
      {
        title: sheet.price,
        kind: 'number',
        ...(planks.every(({ plank }) => plank.price !== undefined) && { total: money }),
      },
    ],
    rows: planks.map(({ plank, leaves }, i) => {
      const { boardFeet, counted, price } = plank;
      return row(
        `${i + 1}`,
        plank.material.name,
        `${plank.nominal ? `${plank.nominal}: ` : ''}${sizeOf(plank, units)}`,
        leaves.map((leaf) => leaf.map(({ laid }) => sayPart(laid.part, units)).join(', ')).join(sheet.leaf),
        ...(isCounted
          ? [
              counted ? say(sheet.countedAs, { thickness: inches(counted[0]), width: inches(counted[1]) }) : '',
              boardFeet === undefined ? '' : { value: boardFeet, text: boardFeet.toFixed(2) },
            ]
          : []),
        price === undefined ? '' : { value: price, text: money(price) },
      );
    }),
  };
}

const inches = (value: number): string => `${Number(value.toFixed(2))}`;

/** Thickness, width, length. */
function sizeOf({ thickness, width, length }: PlankSpec, units: Units): string {
  return say(sheet.sizeOf, {
    thickness: printLength(thickness, units),
    width: printLength(width, units),
    length: printLength(length, units, 'feet'),
  });
}

/** A part with what it is milled to; of one that is scarfed from where to where it reaches. */
function sayPart({ name, thickness, along }: Part, units: Units): string {
  const length = (mm: number) => printLength(mm, units);
  const values = { name, thickness: printThin(thickness, units) };
  return along
    ? say(sheet.scarfedPart, { ...values, from: length(along[0]), to: length(along[1]) })
    : say(sheet.wholePart, values);
}

/** How a plank becomes as thick as its parts: what is sawn and planed adds up to the plank, as it is written. */
function sayLeaves({ plank, leaves }: SawnPlank, { kerf, planing }: MillingSpec, units: Units): string {
  const thickness = leaves[0]![0]!.laid.part.thickness;
  const part = printThin(thickness, units);
  if (leaves.length === 1)
    return plank.thickness - thickness < THIN_STEP[units] / 2
      ? sheet.asThick
      : say(sheet.oneLeaf, { from: printThin(plank.thickness, units), part });
  const leaf = thickness + planing;
  const round = (mm: number) => roundedThin(mm, units);
  const spare = Math.max(0, round(plank.thickness) - leaves.length * round(leaf) - (leaves.length - 1) * round(kerf));
  return say(planing > 0 ? sheet.leaves : sheet.leavesUnplaned, {
    leaves: leaves.length,
    leaf: printThin(leaf, units),
    kerf: printThin(kerf, units),
    spare: printThin(spare, units),
    part,
  });
}

/** Every leaf of a plank with its parts on it, one below the other. */
function sawing(title: string, milling: MillingSpec, units: Units) {
  return (sawn: SawnPlank, i: number): FigurePage => {
    const { plank, leaves } = sawn;
    const tall = plank.width + 60;
    const shapes = leaves.flatMap((leaf, k) => [
      polygon('edge', [
        [0, -k * tall],
        [plank.length, -k * tall],
        [plank.length, plank.width - k * tall],
        [0, plank.width - k * tall],
      ]),
      ...leaf.flatMap(({ laid, at }) => [
        polygon(
          'outline',
          laid.outline.map(([s, z]) => [s + at[0], z + at[1] - k * tall]),
        ),
        ...[0.25, 0.6].map((share) => {
          const s = share * laid.length;
          const near = laid.outline.filter(([x]) => Math.abs(x - s) < laid.length / 20).map(([, z]) => z);
          const z = (Math.min(...near) + Math.max(...near)) / 2;
          return text(say(sheet.partOn, { part: laid.part.name }), [s + at[0], z + at[1] - k * tall], 25);
        }),
      ]),
    ]);
    const called = say(title, { number: i + 1 });
    return {
      kind: 'figure',
      title: called,
      drawing: { id: called.toLowerCase().replaceAll(' ', '-'), title: called, notes: [], shapes },
      notes: [
        say(sheet.plankNote, {
          material: plank.material.name,
          size: sizeOf(plank, units),
          leaves: sayLeaves(sawn, milling, units),
          kerf: printThin(milling.kerf, units),
        }),
      ],
    };
  };
}
