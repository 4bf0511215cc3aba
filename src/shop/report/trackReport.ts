import { bare } from '../../length/bare.js';
import type { Units } from '../../length/units.js';
import { sayProud } from '../../block/sayProud.js';
import { printLength } from '../../length/length.js';
import { printAs, roundedAs } from '../../length/rounded.js';
import { timeLeft, type Pace } from './pace.js';
import { progressOf } from './progress.js';
import type { Elsewhere, Misfit, Refit } from '../fit/refit.js';
import { answersTo } from '../fit/settle.js';
import type { Turn } from '../fit/shape.js';
import { stageOf, UNTOUCHED, type ShopState } from '../log/state.js';
import { STEPS, stepAfter, stepsBehind } from '../log/step.js';
import { blocksByRow, type BlockSizes, type Foam, type TrackedBlock } from '../log/trackedBlock.js';

/** Where the whole board stands, row by row, for a terminal. */
export function boardReport(
  job: string,
  blocks: readonly TrackedBlock[],
  state: ShopState,
  pace: Pace,
  refits: ReadonlyMap<string, Misfit>,
): readonly string[] {
  const whole = progressOf(blocks, state, refits);
  const left = timeLeft(whole.left, pace);
  const lines = [...blocksByRow(blocks)].map(([row, its]) => {
    const { blocks: count, left: open } = progressOf(its, state, refits);
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
export function blockReport(
  block: TrackedBlock,
  state: ShopState,
  units: Units,
  refit: Misfit | undefined,
): readonly string[] {
  const its = state.blocks.get(block.id) ?? UNTOUCHED;
  const proud = sayProud(block.proud, units);
  const next = stepAfter(stageOf(its));
  const behind = stepsBehind(stageOf(its));
  return [
    `${block.id}: ${saySizes(block.sizes, units)}`,
    ...(proud === '' ? [] : [`  once glued in, plane off flush: ${proud}`]),
    ...STEPS.map((step, index) => {
      const marks = its.marks[step] ?? [];
      const told = marks.map(({ who, happened }) => `${sayTime(happened)}${who === '' ? '' : ` ${who}`}`).join(', ');
      return `  ${step.padEnd(11)}${marks.length > 0 ? told : index < behind ? 'done' : '-'}`;
    }),
    ...its.notes.map(({ text, who }) => `  note: ${text}${who === '' ? '' : ` (${who})`}`),
    ...(its.photos.length > 0 ? [`  photos: ${its.photos.length}, to be seen on the page`] : []),
    refit
      ? `  The plan has changed: ${sayRefit(refit, units)}${sayAnswers(block.id, refit)}`
      : next === undefined
        ? '  Nothing left to do.'
        : `  Next: ${next}.`,
  ];
}

/** Each block the changed plan disagrees with, and what to do. */
export function refitReport(refits: ReadonlyMap<string, Misfit>, units: Units): readonly string[] {
  if (refits.size === 0) return [];
  const lines = [...refits].map(([id, refit]) => `${id}: ${sayRefit(refit, units)}${sayAnswers(id, refit)}`);
  return ['', 'The plan has changed since these were made. Progress counts only what fits:', ...lines];
}

/** What can be told about it afterwards, as it is typed. */
function sayAnswers(id: string, refit: Misfit): string {
  const answers = answersTo(refit);
  return answers.length === 0 ? '' : ` Then: track JOB ${id} ${answers.join(' (or ')}${')'.repeat(answers.length - 1)}`;
}

/** How many blocks are to be made new, trimmed and so on, most urgent first: `12 to make new, 3 to trim`. */
export function countRefits(refits: ReadonlyMap<string, Misfit>): string {
  const kinds = [...refits.values()].map(({ kind }) => kind);
  return (Object.entries(TO_DO) as [Misfit['kind'], string][])
    .map(([kind, words]) => [kinds.filter((one) => one === kind).length, words] as const)
    .filter(([count]) => count > 0)
    .map(([count, words]) => `${count} ${words}`)
    .join(', ');
}

/** What a changed plan asks, in two words for a list. */
export const TO_DO: Readonly<Record<Misfit['kind'], string>> = {
  new: 'to make new',
  trim: 'to trim',
  turn: 'to turn',
  'mark-again': 'to mark again',
  'other-foam': 'of another foam',
  'glued-in': 'glued in otherwise than planned',
  unused: 'not in the plan',
};

/** What to do with a block whose plan has changed, in a sentence. */
export function sayRefit(refit: Refit, units: Units): string {
  switch (refit.kind) {
    case 'fits':
      return 'still fits.';
    case 'mark-again':
      return `the plan has changed: mark it again, ${saySizes(refit.to, units)}.`;
    case 'turn':
      return `the plan has changed: it fits if it is turned ${sayTurn(refit.turned)}. Mark nose and deck anew.`;
    case 'other-foam':
      return `it is cut from ${sayFoam(refit.was)}, the plan now asks for ${sayFoam(refit.now)}. Make it new, or keep it and weigh it.`;
    case 'trim': {
      const { to, off: over, turned } = refit;
      const off = sayMore(
        (name) => to[name] + over[name],
        (name) => to[name],
        units,
        'off the',
      );
      return `${turned ? `turn it ${sayTurn(turned)} and ` : ''}trim it to ${saySizes(refit.to, units)}${off === '' ? ', to the new shape' : ` (${off})`}.`;
    }
    case 'new': {
      const { to, short: lack } = refit;
      const short = sayMore(
        (name) => to[name],
        (name) => to[name] - lack[name],
        units,
        'short in',
      );
      return `make it new, ${saySizes(refit.to, units)}: the old one is ${short === '' ? 'of another shape' : short}.${sayElsewhere(refit.elsewhere)}`;
    }
    case 'glued-in':
      return `already glued in, and the plan now asks for ${saySizes(refit.to, units)}. Settle which of the two holds.`;
    case 'unused':
      return `not in the plan any more. Keep it apart; nothing recorded about it is lost.${sayElsewhere(refit.elsewhere)}`;
  }
}

function sayElsewhere(elsewhere: Elsewhere | 'none' | undefined): string {
  if (!elsewhere) return '';
  if (elsewhere === 'none') return ' It serves in no other open place.';
  const { place, turned, trim } = elsewhere;
  return ` It serves as ${place}${turned ? `, turned ${sayTurn(turned)}` : ''}${trim ? ', trimmed' : ''}.`;
}

function sayTurn(turned: Turn): string {
  return { round: 'end for end', over: 'deck edge down', 'round and over': 'end for end and deck edge down' }[turned];
}

function sayFoam({ name, density }: Foam): string {
  return `${name} (${Number(density.toPrecision(3))} kg/m³)`;
}

/** `412 × 98 × 45 mm`: along the face, across it, into the piece. */
export function saySizes({ length, height, thickness }: BlockSizes, units: Units): string {
  const [a, b, c] = [length, height, thickness].map((mm) => bare(printAs('block', mm, units)));
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

/** In local time, with its zone: `2026-03-14 13:00 GMT+1`. */
export function sayTime(ms: number): string {
  const parts = new Intl.DateTimeFormat('en-GB', {
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    timeZoneName: 'short',
  }).formatToParts(ms);
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((one) => one.type === type)!.value;
  return `${part('year')}-${part('month')}-${part('day')} ${part('hour')}:${part('minute')} ${part('timeZoneName')}`;
}

function table(lines: readonly (readonly string[])[]): readonly string[] {
  const widths = lines[0]!.map((_, column) => Math.max(...lines.map((line) => line[column]!.length)));
  return lines.map((line) =>
    line.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  '),
  );
}
