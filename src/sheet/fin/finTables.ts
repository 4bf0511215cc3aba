import words from '../../../templates/fin.json' with { type: 'json' };
import type { BuiltFin } from '../../fin/finOf.js';
import { halfThickness } from '../../fin/foil.js';
import { printArealWeight } from '../../length/areal.js';
import { bare } from '../../length/bare.js';
import { printFine } from '../../length/fine.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import { say, WORDS } from '../../words/say.js';
import type { Cell, TablePage, TextBlock } from '../pages.js';
import { weightCell } from '../weights/weightsTables.js';
import { columnsOf, pouredCell, row } from '../table.js';

/** Lay-up and glue-up, sled, foil, and what is done at the base. `loss`: resin that stays in pot and tools, a share. */
export function finTables(fin: BuiltFin, loss: number, units: Units): TextBlock[] {
  return [
    ...layupTable(fin, loss, units),
    ...sledTable(fin, units),
    ...foilTable(fin, units),
    ...baseTable(fin, loss, units),
  ];
}

function layupTable({ spec, panel, blank, standing }: BuiltFin, loss: number, units: Units): TextBlock[] {
  const { title, note, sizeNote, columns, ...said } = words.layup;
  const size = (length: number, width: number) =>
    say(said.size, { length: printAs('needed', length, units), width: printAs('needed', width, units) });
  const both = spec.build!.section === 'symmetric' ? 2 : 1;
  return titled(title, [say(note, { count: standing.length, loss: `${Math.round(100 * loss)} %` }), sizeNote], {
    columns: columnsOf(
      [columns.what, 'text'],
      [columns.count, 'number'],
      [columns.size, 'text'],
      [columns.thick, 'number'],
      [columns.weight, 'number'],
      [columns.mix, 'number'],
    ),
    rows: [
      ...(panel
        ? [
            row(
              say(said.cloth, { cloth: printArealWeight(panel.cloth, units) }),
              panel.layers,
              size(panel.length, panel.width),
              '',
              weightCell(panel.clothWeight, units),
              pouredCell(panel.resin * (1 + loss), units),
            ),
            row(said.panel, 1, size(blank.length, blank.width), fineCell(panel.thickness, units), '', ''),
          ]
        : []),
      ...spec.build!.wood.map(({ material, thickness }, i) =>
        row(
          say(panel ? said.wood : said.woodAlone, { wood: material.name, number: i + 1 }),
          both,
          size(blank.length, blank.width),
          fineCell(thickness, units),
          '',
          '',
        ),
      ),
      row(said.blank, 1, size(blank.length, blank.width), fineCell(blank.thickness, units), '', ''),
    ],
  });
}

function sledTable({ spec, sled, blank }: BuiltFin, units: Units): TextBlock[] {
  const { title, columns, ...said } = words.sled;
  const fine = (mm: number) => printFine(mm, units);
  const isOne = sled.sides.length === 1;
  const isMeasured = spec.build!.blankThickness !== undefined;
  const meant = say(isMeasured ? said.measured : said.foreseen, { thick: fine(blank.thickness) });
  return titled(
    title,
    (isOne ? said.noteOne : said.note).map((note) =>
      say(note, { depth: fine(spec.depth), pass: fine(spec.build!.pass), meant }),
    ),
    {
      columns: columnsOf(
        [columns.side, 'text'],
        [columns.low, 'text'],
        [columns.high, 'text'],
        [columns.opening, 'text'],
        [columns.base, 'text'],
        [columns.tip, 'text'],
        [columns.taken, 'text'],
        [columns.passes, 'number'],
      ),
      rows: sled.sides.map(({ high, opening, base, tip, taken, passes }, i) =>
        row(
          isOne ? said.only : i === 0 ? said.first : said.second,
          ...[sled.low, high, opening, base, tip, taken].map(fine),
          passes,
        ),
      ),
    },
  );
}

/** Shares of the chord at which the thickness is told. */
const SHARES = [0.1, 0.3, 0.5, 0.7, 0.9];

function foilTable({ sections, panel }: BuiltFin, units: Units): TextBlock[] {
  const { title, note, noteWood, columns } = words.foilTable;
  // The unit stands once, over the table.
  const inUnits = (mm: number, text: string): Cell => ({ value: mm, text: bare(text) });
  const fine = (mm: number) => inUnits(mm, printFine(mm, units));
  const place = (mm: number | undefined) => (mm === undefined ? '' : inUnits(mm, printLength(mm, units)));
  return titled(title, [say(panel ? note : noteWood, { units: WORDS.units[units] })], {
    columns: columnsOf(
      [columns.y, 'number'],
      [columns.chord, 'number'],
      ...SHARES.map((share) => [say(columns.at, { share: Math.round(100 * share) }), 'number'] as const),
      ...(panel ? [[columns.ahead, 'number'] as const, [columns.behind, 'number'] as const] : []),
    ),
    rows: sections.map(({ y, length, thickness, lines }) =>
      row(
        place(y),
        place(length),
        ...SHARES.map((share) => fine(2 * thickness * halfThickness(share))),
        ...(panel ? [place(lines[0]?.ahead), place(lines[0] && length - lines[0].behind)] : []),
      ),
    ),
  });
}

function baseTable({ spec, base }: BuiltFin, loss: number, units: Units): TextBlock[] {
  if (!base) return [];
  const { title, note, columns, ...said } = words.baseTable;
  const radius = printLength(base.radius, units);
  const around = 2 * (spec.base + Math.PI * base.radius);
  return titled(title, [note], {
    columns: columnsOf(
      [columns.what, 'text'],
      [columns.count, 'number'],
      [columns.size, 'text'],
      [columns.weight, 'number'],
      [columns.mix, 'number'],
    ),
    rows: [
      row(
        say(base.of === 'rope' ? said.rope : said.round, { radius }),
        1,
        say(said.ropeSize, { length: printAs('needed', around, units) }),
        base.fibre > 0 ? weightCell(base.fibre, units) : '',
        pouredCell((base.round - base.fibre) * (1 + loss), units),
      ),
      ...base.strips.map(({ cloth, length, width, dry, resin }) =>
        row(
          say(said.strip, { cloth: printArealWeight(cloth, units) }),
          2,
          say(said.size, { length: printAs('needed', length, units), width: printAs('needed', width, units) }),
          weightCell(dry, units),
          pouredCell(resin * (1 + loss), units),
        ),
      ),
    ],
  });
}

function titled(title: string, notes: readonly string[], table: Pick<TablePage, 'columns' | 'rows'>): TextBlock[] {
  return [
    { kind: 'heading', text: title },
    ...notes.map((text) => ({ kind: 'paragraph' as const, text })),
    { kind: 'table', ...table },
  ];
}

const fineCell = (mm: number, units: Units): Cell => ({ value: mm, text: printFine(mm, units) });
