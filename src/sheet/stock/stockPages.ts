import words from '../../../templates/stock.json' with { type: 'json' };
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import type { LumberList, SawnPlank } from '../../stock/lumber/lumberList.js';
import type { Part } from '../../stock/lumber/nest.js';
import { sayStock } from '../../stock/sayStock.js';
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
  const said = sayStock(stock, job.stock, job.units).map((each) => each.trim());
  // One paragraph: its lines are short, and paper is dear.
  const inOne = `${said.join('; ')}.`;
  return [
    ...(blank
      ? [...[blankSide(plan, blank), ...blankMaps(plan, blank)].map(figure), markingUp(plan, blank, [inOne])]
      : []),
    ...(lumber ? [listOf(sheet.lumber, lumber, job.units), ...lumber.planks.map(sawing(sheet.plank, job.units))] : []),
    ...(billets
      ? [listOf(sheet.billets, billets, job.units), ...billets.planks.map(sawing(sheet.billet, job.units))]
      : []),
  ];
}

/** The notes stand under the figure. */
function figure(drawing: Drawing): FigurePage {
  return { kind: 'figure', title: drawing.title, drawing: { ...drawing, notes: [] }, notes: drawing.notes };
}

function listOf(title: string, { planks, lacks }: LumberList, units: Units): TablePage {
  const length = (mm: number) => printLength(mm, units);
  return {
    kind: 'table',
    title,
    notes: [
      sheet.listNote,
      ...(lacks.length > 0 ? [say(sheet.lacking, { parts: lacks.map(({ part }) => part).join(', ') })] : []),
    ],
    columns: columnsOf(
      [sheet.number, 'text'],
      [sheet.material, 'text'],
      [sheet.size, 'text'],
      [sheet.parts, 'text'],
      [sheet.feet, 'number'],
      [sheet.price, 'number'],
    ),
    rows: planks.map(({ plank, leaves }, i) =>
      row(
        `${i + 1}`,
        plank.material.name,
        `${plank.nominal ? `${plank.nominal}: ` : ''}${length(plank.thickness)} × ${length(plank.width)} × ${length(plank.length)}`,
        leaves.map((leaf) => leaf.map(({ laid }) => sayPart(laid.part, units)).join(', ')).join(sheet.leaf),
        plank.boardFeet === undefined ? '' : { value: plank.boardFeet, text: plank.boardFeet.toFixed(1) },
        plank.price === undefined ? '' : { value: plank.price, text: plank.price.toFixed(2) },
      ),
    ),
  };
}

/** A part with what it is milled to; of one that is scarfed from where to where it reaches. */
function sayPart({ name, thickness, along }: Part, units: Units): string {
  const length = (mm: number) => printLength(mm, units);
  const values = { name, thickness: length(thickness) };
  return along
    ? say(sheet.scarfedPart, { ...values, from: length(along[0]), to: length(along[1]) })
    : say(sheet.wholePart, values);
}

/** Every leaf of a plank with its parts on it, one below the other. */
function sawing(title: string, units: Units) {
  return ({ plank, leaves }: SawnPlank, i: number): FigurePage => {
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
          length: printLength(plank.length, units),
          width: printLength(plank.width, units),
          thickness: printLength(plank.thickness, units),
          leaves: leaves.length > 1 ? say(sheet.leaves, { leaves: leaves.length }) : sheet.oneLeaf,
        }),
      ],
    };
  };
}
