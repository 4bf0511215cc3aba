import words from '../../../templates/stock.json' with { type: 'json' };
import { printLength } from '../../length/length.js';
import { printAs, roundedAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import type { LumberList, SawnPlank } from '../../stock/lumberList.js';
import type { InBlank } from '../../stock/stockOf.js';
import { sayStock } from '../../stock/sayStock.js';
import { say } from '../../words/say.js';
import type { Cell, DocumentPage, FigurePage, TablePage } from '../pages.js';
import { polygon, text } from '../primitives.js';
import { columnsOf, heading, row } from '../table.js';

const { sheet } = words;

/** What comes off the blank, what to buy, and how it is sawn. */
export function stockPages(plan: Plan): DocumentPage[] {
  const { stock, job } = plan;
  if (!stock || !job.stock) return [];
  const { blank, lumber, billets } = stock;
  const said = sayStock(stock, job.stock, job.units).map((each) => each.trim());
  return [
    ...(blank ? [markingUp(blank, job.stock.allowance, plan.board.length, job.units, said)] : []),
    ...(lumber ? [listOf(sheet.lumber, lumber, job.units), ...lumber.planks.map(sawing(sheet.plank, job.units))] : []),
    ...(billets
      ? [listOf(sheet.billets, billets, job.units), ...billets.planks.map(sawing(sheet.billet, job.units))]
      : []),
  ];
}

/** Between stations of the table, mm. */
const STATIONS = 200;

/** What stands over the finished board strip by strip: the least of deck, bottom and rail between two stations. */
function markingUp(blank: InBlank, asked: number, length: number, units: Units, notes: readonly string[]): TablePage {
  const stations = Math.ceil(length / STATIONS);
  const cells = (strip: number, station: number) =>
    (['deck', 'bottom', 'rail'] as const).map((side): { cell: Cell; isShort: boolean } => {
      const least = leastOf(blank, strip, side, station * STATIONS, (station + 1) * STATIONS);
      if (least === Infinity) return { cell: '', isShort: false };
      const value = roundedAs('there', least, units);
      return { cell: { value, text: printAs('there', least, units) }, isShort: least < asked };
    });
  return {
    kind: 'table',
    title: sheet.markingUp,
    notes: [...notes, sheet.markingNote],
    columns: columnsOf(
      [sheet.from, 'text'],
      [sheet.to, 'text'],
      [sheet.deck, 'number'],
      [sheet.bottom, 'number'],
      [sheet.rail, 'number'],
      [sheet.short, 'text'],
    ),
    rows: blank.strips.flatMap(({ member }, strip) => {
      const lines = Array.from({ length: stations }, (_, station) => {
        const found = cells(strip, station);
        if (found.every(({ cell }) => cell === '')) return undefined;
        const ends = [station * STATIONS, Math.min(length, (station + 1) * STATIONS)].map((x) => printLength(x, units));
        const short = found.some(({ isShort }) => isShort) ? sheet.isShort : '';
        return row(ends[0]!, ends[1]!, ...found.map(({ cell }) => cell), short);
      }).filter((each) => each !== undefined);
      return lines.length > 0
        ? [
            heading(
              blank.isAlike ? say(sheet.pair, { strip: member.id, other: member.id.replace('MR', 'ML') }) : member.id,
            ),
            ...lines,
          ]
        : [];
    }),
  };
}

const CODES = { deck: [0], bottom: [1], rail: [2, 3] } as const;

function leastOf(blank: InBlank, strip: number, side: keyof typeof CODES, from: number, to: number): number {
  let least = Infinity;
  for (const { skin, over, of } of blank.fits) {
    if (!of.includes(blank.strips[strip]!.member.id)) continue;
    over.forEach((each, i) => {
      const x = skin.at[3 * i]!;
      if (skin.strip[i] !== strip || x < from || x > to) return;
      if ((CODES[side] as readonly number[]).includes(skin.side[i]!)) least = Math.min(least, each);
    });
  }
  return least;
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
        leaves
          .map((leaf) => leaf.map(({ laid }) => `${laid.part.name} (${length(laid.part.thickness)})`).join(', '))
          .join(sheet.leaf),
        plank.boardFeet === undefined ? '' : { value: plank.boardFeet, text: plank.boardFeet.toFixed(1) },
        plank.price === undefined ? '' : { value: plank.price, text: plank.price.toFixed(2) },
      ),
    ),
  };
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
          leaves: leaves.length,
        }),
      ],
    };
  };
}
