import words from '../../../templates/stock.json' with { type: 'json' };
import { bare } from '../../length/bare.js';
import { printAs, roundedAs } from '../../length/rounded.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import { passesFor } from '../../stock/passes.js';
import { sayStrip } from '../../stock/sayStrip.js';
import { SIDES } from '../../stock/skin.js';
import type { InBlank } from '../../stock/inBlank.js';
import { say } from '../../words/say.js';
import type { Cell, TablePage, TableRow } from '../pages.js';
import { columnsOf, heading, row } from '../table.js';
import { sayStretch, stringerRows } from './stringerRows.js';

const { sheet } = words;
/** Between stations of the table, mm. */
const STATIONS = { mm: 200, in: 8 * MM_PER_INCH } as const;
const SHOWN = { deck: ['deck'], bottom: ['bottom'], rail: ['left rail', 'right rail'] } as const;
type Shown = keyof typeof SHOWN;

/**
 * Member by member, from one station to the next: the least that stands over deck, bottom and rail, how the planer is
 * set to take it off, where a stringer is taken down by itself, and where foam is short.
 */
export function markingUp(plan: Plan, blank: InBlank, notes: readonly string[]): TablePage {
  const { units } = plan.job;
  const { allowance, planer } = plan.job.stock!;
  const step = STATIONS[units];
  const stretches = Array.from({ length: Math.ceil(plan.board.length / step) }, (_, i): [number, number] => [
    i * step,
    Math.min(plan.board.length, (i + 1) * step),
  ]);
  const lineOf = (strip: number, from: number, to: number): TableRow | undefined => {
    const least = (side: Shown) => leastOf(blank, strip, side, from, to);
    const over = { deck: least('deck'), bottom: least('bottom'), rail: least('rail') };
    const found = Object.values(over).filter(Number.isFinite);
    if (found.length === 0) return undefined;
    const passes = (mm: number) => (mm === Infinity ? '' : sayPasses(mm, allowance, planer, units));
    return row(
      sayStretch(from, to, units),
      overCell(over.deck, units),
      passes(over.deck),
      overCell(over.bottom, units),
      passes(over.bottom),
      overCell(over.rail, units),
      found.some((mm) => mm < allowance) ? sheet.isShort : '',
    );
  };
  const rowsOf = new Map(
    blank.strips.map(({ member }, strip) => [
      member.id,
      stretches.flatMap(([from, to]) => lineOf(strip, from, to) ?? []),
    ]),
  );
  const seen = plan.layup.members.filter(({ side }) => !blank.isAlike || side !== 'L');
  return {
    kind: 'table',
    title: sheet.markingUp,
    notes: [
      ...notes,
      say(sheet.markingNote, { allowance: printAs('stays', allowance, units), cut: printAs('pass', planer, units) }),
      sheet.stringerNote,
    ],
    columns: columnsOf(
      [sheet.stretch, 'text'],
      [sheet.overDeck, 'number'],
      [sheet.planer, 'text'],
      [sheet.underBottom, 'number'],
      [sheet.planer, 'text'],
      [sheet.beyondRail, 'number'],
      [sheet.short, 'text'],
    ),
    rows: seen.flatMap((member) => {
      const rows = rowsOf.get(member.id) ?? stringerRows(plan, member, stretches);
      return rows.length > 0 ? [heading(sayStrip(member.id, blank.isAlike)), ...rows] : [];
    }),
  };
}

function overCell(mm: number, units: Units): Cell {
  return mm === Infinity ? '' : { value: roundedAs('over', mm, units), text: printAs('over', mm, units) };
}

/** `3 × 1/16 + 1/32 in`: the unit once. */
function sayPasses(over: number, stays: number, cut: number, units: Units): string {
  const { full, last } = passesFor(over, stays, cut, units);
  const most = printAs('pass', cut, units);
  const parts = [
    ...(full > 1 ? [say(sheet.passes, { count: full, cut: most })] : full === 1 ? [most] : []),
    ...(last > 0 ? [printAs('pass', last, units)] : []),
  ];
  return parts.map((part, i) => (i + 1 < parts.length ? bare(part) : part)).join(' + ') || sheet.noPass;
}

function leastOf({ fits, strips }: InBlank, strip: number, side: Shown, from: number, to: number): number {
  let least = Infinity;
  for (const { skin, over, of } of fits) {
    if (!of.includes(strips[strip]!.member.id)) continue;
    over.forEach((each, i) => {
      const x = skin.at[3 * i]!;
      if (skin.strip[i] !== strip || x < from || x > to || each >= least) return;
      if ((SHOWN[side] as readonly string[]).includes(SIDES[skin.side[i]!]!)) least = each;
    });
  }
  return least;
}
