import words from '../../../templates/stock.json' with { type: 'json' };
import type { LaidMember } from '../../layup/layup.js';
import { bare } from '../../length/bare.js';
import { printLength } from '../../length/length.js';
import { printAs, roundedAs } from '../../length/rounded.js';
import { printThin, roundedThin } from '../../length/thin.js';
import type { Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import { planedOff } from '../../stock/passes.js';
import { say } from '../../words/say.js';
import type { Cell, TableRow } from '../pages.js';
import { row } from '../table.js';
import { proudOf } from './proudStringer.js';

const { sheet } = words;

/**
 * What a stringer has over the finished board, and how it is taken down: with the foam beside it, or by itself where it
 * stands proud of that. Stretches with the same words are one row; none where the stringer is not milled.
 */
export function stringerRows(
  plan: Plan,
  stringer: LaidMember,
  stretches: readonly (readonly [from: number, to: number])[],
): TableRow[] {
  const { units, stock: spec } = plan.job;
  const profile = plan.stock?.profiles.find(({ member }) => member.id === stringer.id);
  if (!profile || !spec) return [];
  const { above, below } = spec.milling;
  const proud = proudOf(plan, stringer);
  const [begin, end] = [profile.deck[0]![0], profile.deck.at(-1)![0]];
  const found: { from: number; to: number; deck: string; bottom: string }[] = [];
  for (const [from, to] of stretches) {
    if (to <= begin || from >= end) continue;
    const on = (side: 'deck' | 'bottom', over: number) =>
      howTaken(planedOff(over, spec.allowance, units), proud(side, from, to) ?? 0, units);
    const next = { deck: on('deck', above), bottom: on('bottom', below) };
    const last = found.at(-1);
    if (last?.deck === next.deck && last.bottom === next.bottom) last.to = to;
    else found.push({ from, to, ...next });
  }
  const cell = (mm: number): Cell => ({ value: roundedAs('over', mm, units), text: printAs('over', mm, units) });
  return found.map(({ from, to, deck, bottom }) =>
    row(
      sayStretch(from, to, units),
      cell(above),
      deck,
      cell(below),
      bottom,
      '',
      Math.min(above, below) < spec.allowance ? sheet.isShort : '',
    ),
  );
}

/** From where to where along the board, the unit once. */
export function sayStretch(from: number, to: number, units: Units): string {
  return say(sheet.fromTo, { from: bare(printLength(from, units)), to: printLength(to, units) });
}

/** @param off what comes off it in all, mm; @param proud how far it stands over the lower foam beside it, mm */
function howTaken(off: number, proud: number, units: Units): string {
  if (off <= 0) return sheet.noPass;
  const alone = Math.min(off, roundedThin(proud, units));
  if (alone <= 0) return say(sheet.withFoam, { off: printThin(off, units) });
  const said = {
    alone: printThin(alone, units),
    first: bare(printThin(alone, units)),
    off: printThin(off - alone, units),
  };
  return say(alone < off - ROUNDING ? sheet.aloneFirst : sheet.alone, said);
}

/** What arithmetic leaves, mm. */
const ROUNDING = 1e-6;
