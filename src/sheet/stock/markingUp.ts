import words from '../../../templates/stock.json' with { type: 'json' };
import type { RawStockSpec } from '../../job/spec/stock.js';
import { printLength } from '../../length/length.js';
import { printAs, roundedAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import { passesFor } from '../../stock/passes.js';
import { sayStrip } from '../../stock/sayStrip.js';
import { SIDES } from '../../stock/skin.js';
import type { InBlank } from '../../stock/inBlank.js';
import { say } from '../../words/say.js';
import type { Cell, TablePage } from '../pages.js';
import { columnsOf, heading, row } from '../table.js';

const { sheet } = words;
/** Between stations of the table, mm. */
const STATIONS = 200;
const SHOWN = { deck: ['deck'], bottom: ['bottom'], rail: ['left rail', 'right rail'] } as const;
type Shown = keyof typeof SHOWN;

/**
 * Strip by strip, from one station to the next: the least that stands over deck, bottom and rail, how the planer is set
 * to take it off, and where it is short.
 */
export function markingUp(
  blank: InBlank,
  { allowance, planer }: RawStockSpec,
  length: number,
  units: Units,
  notes: readonly string[],
): TablePage {
  const stations = Math.ceil(length / STATIONS);
  const lineOf = (strip: number, station: number) => {
    const [from, to] = [station * STATIONS, Math.min(length, (station + 1) * STATIONS)];
    const least = (side: Shown) => leastOf(blank, strip, side, from, to);
    const over = { deck: least('deck'), bottom: least('bottom'), rail: least('rail') };
    const found = Object.values(over).filter(Number.isFinite);
    if (found.length === 0) return undefined;
    const off = (mm: number): Cell =>
      mm === Infinity ? '' : { value: roundedAs('there', mm, units), text: printAs('there', mm, units) };
    const passes = (mm: number) => (mm === Infinity ? '' : sayPasses(mm, allowance, planer, units));
    return row(
      printLength(from, units),
      printLength(to, units),
      off(over.deck),
      passes(over.deck),
      off(over.bottom),
      passes(over.bottom),
      off(over.rail),
      found.some((mm) => mm < allowance) ? sheet.isShort : '',
    );
  };
  return {
    kind: 'table',
    title: sheet.markingUp,
    notes: [
      ...notes,
      say(sheet.markingNote, { allowance: printLength(allowance, units), cut: printLength(planer, units) }),
    ],
    columns: columnsOf(
      [sheet.from, 'text'],
      [sheet.to, 'text'],
      [sheet.offDeck, 'number'],
      [sheet.planer, 'text'],
      [sheet.offBottom, 'number'],
      [sheet.planer, 'text'],
      [sheet.offRail, 'number'],
      [sheet.short, 'text'],
    ),
    rows: blank.strips.flatMap(({ member }, strip) => {
      const lines = Array.from({ length: stations }, (_, station) => lineOf(strip, station)).filter(
        (each) => each !== undefined,
      );
      return lines.length > 0 ? [heading(sayStrip(member.id, blank.isAlike)), ...lines] : [];
    }),
  };
}

function sayPasses(over: number, stays: number, cut: number, units: Units): string {
  const { full, last } = passesFor(over, stays, cut, units);
  const parts = [
    ...(full > 0 ? [say(sheet.passes, { count: full, cut: printLength(cut, units) })] : []),
    ...(last > 0 ? [say(sheet.passes, { count: 1, cut: printLength(last, units) })] : []),
  ];
  return parts.join(' + ') || sheet.noPass;
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
