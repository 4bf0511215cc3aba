import { printLength } from '../length/length.js';
import { printAs, roundedAs } from '../length/rounded.js';
import { timeLeft, type Pace } from './pace.js';
import { progressOf } from './progress.js';
import type { Refit } from './refit.js';
import { stageOf, UNTOUCHED, type ShopState } from './state.js';
import { STEPS, stepAfter, stepsBehind } from './step.js';
import { blocksByRow, type BlockSizes, type TrackedBlock } from './trackedBlock.js';

export type Units = 'mm' | 'in';

/** Where the whole board stands, row by row, for a terminal. */
export function boardReport(
  job: string,
  blocks: readonly TrackedBlock[],
  state: ShopState,
  pace: Pace,
): readonly string[] {
  const whole = progressOf(blocks, state);
  const left = timeLeft(whole.left, pace);
  const lines = [...blocksByRow(blocks)].map(([row, its]) => {
    const { blocks: count, left: open } = progressOf(its, state);
    return [row, String(count), ...STEPS.map((step) => String(count - open[step]))];
  });
  return [
    `${job}: ${whole.glued} of ${whole.blocks} blocks glued, ${whole.stepsDone} of ${whole.steps} steps done`,
    ...(left === undefined || whole.stepsDone === whole.steps
      ? []
      : [`About ${sayDuration(left)} of work left at the pace so far.`]),
    '',
    ...table([['row', 'blocks', ...STEPS], ...lines]),
  ];
}

/** One block: its sizes, each step with who and when, its notes. */
export function blockReport(block: TrackedBlock, state: ShopState, units: Units): readonly string[] {
  const its = state.blocks.get(block.id) ?? UNTOUCHED;
  const next = stepAfter(stageOf(its));
  const behind = stepsBehind(stageOf(its));
  return [
    `${block.id}: ${saySizes(block.sizes, units)}`,
    ...STEPS.map((step, index) => {
      const marks = its.marks[step] ?? [];
      const told = marks.map(({ who, happened }) => `${sayTime(happened)}${who === '' ? '' : ` ${who}`}`).join(', ');
      return `  ${step.padEnd(11)}${marks.length > 0 ? told : index < behind ? 'done' : '-'}`;
    }),
    ...its.notes.map(({ text, who }) => `  note: ${text}${who === '' ? '' : ` (${who})`}`),
    ...(its.photos.length > 0 ? [`  photos: ${its.photos.length}, to be seen on the page`] : []),
    next === undefined ? '  Nothing left to do.' : `  Next: ${next}.`,
  ];
}

/** Each block the changed plan disagrees with, and what to do. */
export function refitReport(refits: ReadonlyMap<string, Refit>, units: Units): readonly string[] {
  return [...refits].map(([id, refit]) => `${id}: ${sayRefit(refit, units)}`);
}

/** What to do with a block whose plan has changed, in a sentence. */
export function sayRefit(refit: Refit, units: Units): string {
  switch (refit.kind) {
    case 'fits':
      return 'still fits.';
    case 'mark-again':
      return `the plan has changed: mark it again, ${saySizes(refit.to, units)}.`;
    case 'trim': {
      const { to, off: over } = refit;
      const off = sayMore(
        (name) => to[name] + over[name],
        (name) => to[name],
        units,
        'off the',
      );
      return `trim it to ${saySizes(refit.to, units)}${off === '' ? ', to the new shape' : ` (${off})`}.`;
    }
    case 'new': {
      const { to, short: lack } = refit;
      const short = sayMore(
        (name) => to[name],
        (name) => to[name] - lack[name],
        units,
        'short in',
      );
      return `make it new, ${saySizes(refit.to, units)}: the old one is ${short === '' ? 'of another shape' : short}.`;
    }
    case 'glued-in':
      return `already glued in, and the plan now asks for ${saySizes(refit.to, units)}. Settle which of the two holds.`;
    case 'unused':
      return 'not in the plan any more. Keep it apart; nothing recorded about it is lost.';
  }
}

/** `412 × 98 × 45 mm`: along the face, across it, into the piece. */
export function saySizes({ length, height, thickness }: BlockSizes, units: Units): string {
  const [a, b, c] = [length, height, thickness].map((mm) => printAs('block', mm, units).replace(/ (mm|in)$/, ''));
  return `${a} × ${b} × ${c} ${units}`;
}

/** Working time as it is said: `6 h 20 min`, `35 min`. */
export function sayDuration(ms: number): string {
  const minutes = Math.max(1, Math.round(ms / 60_000));
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes} min` : `${hours} h ${minutes % 60} min`;
}

/** How much longer, higher and thicker one block is than another, by the sizes as they are written. */
function sayMore(
  larger: (name: keyof BlockSizes) => number,
  smaller: (name: keyof BlockSizes) => number,
  units: Units,
  word: string,
): string {
  return (['length', 'height', 'thickness'] as const)
    .map((name) => [name, roundedAs('block', larger(name), units) - roundedAs('block', smaller(name), units)] as const)
    .filter(([, mm]) => printLength(mm, units) !== printLength(0, units))
    .map(([name, mm]) => `${printLength(mm, units)} ${word} ${name}`)
    .join(', ');
}

function sayTime(ms: number): string {
  return new Date(ms).toISOString().slice(0, 16).replace('T', ' ');
}

function table(lines: readonly (readonly string[])[]): readonly string[] {
  const widths = lines[0]!.map((_, column) => Math.max(...lines.map((line) => line[column]!.length)));
  return lines.map((line) =>
    line.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  '),
  );
}
