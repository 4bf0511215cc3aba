import type { Job } from '../../job/job.js';
import { parseLength } from '../../length/length.js';
import { documentOf } from '../../job/edit/document.js';
import { valueAt, withoutKey, withValue } from '../../job/edit/value.js';
import { ruleStep, writtenLength } from '../../job/edit/written.js';

const SIDES = ['right', 'left', 'both'] as const;

/** Where a keep-out of the plan stands in the job file: one line of the file with `both:` makes two. */
interface InFile {
  readonly line: number;
  readonly side?: (typeof SIDES)[number];
  /** Of the two that `both:` makes, this one lies to the left. */
  readonly isLeft: boolean;
}

/**
 * The job's text with a keep-out moved, in whole marks of the rule. One that lies on both sides moves on both.
 *
 * @param index which of the job's keep-outs in plan
 * @param dx how far toward the tail, mm
 * @param dy how far to the right, mm
 */
export function withKeepOutMoved(text: string, job: Job, index: number, dx: number, dy: number): string {
  const document = () => documentOf(text);
  const one = writtenAs((document().toJS() as { keepOuts?: unknown } | null)?.keepOuts)[index];
  if (!one) return text;
  const { units, board } = job;
  const step = ruleStep(units);
  const path = (key: string) => ['keepOuts', one.line, key];
  const read = (key: string): number => {
    const parsed = parseLength(valueAt(document(), path(key)) ?? 0, units);
    return parsed.ok ? parsed.value : 0;
  };
  const set = (into: string, key: string, mm: number) =>
    withValue(into, path(key), writtenLength(mm, units, valueAt(document(), path(key))));

  let moved = text;
  const along = Math.round(dx / step) * step;
  if (along !== 0) {
    const key = document().hasIn(path('fromTail')) ? 'fromTail' : 'at';
    const now = read(key) + (key === 'at' ? along : -along);
    moved = set(moved, key, Math.min(Math.max(now, 0), board.length));
  }
  const across = Math.round(dy / step) * step;
  if (across === 0) return moved;
  if (one.side === 'both') {
    const away = read('both') + (one.isLeft ? -across : across);
    return away > 0 ? set(moved, 'both', away) : moved;
  }
  const y = (one.side === 'left' ? -read('left') : one.side === 'right' ? read('right') : 0) + across;
  const side = y < 0 ? 'left' : 'right';
  if (one.side !== undefined && one.side !== side) moved = withoutKey(moved, path(one.side));
  return set(moved, side, Math.abs(y));
}

/**
 * The reader's order: those drawn on a joint are none of the plan's; `both:` gives the left one, then the right one.
 */
function writtenAs(list: unknown): InFile[] {
  if (!Array.isArray(list)) return [];
  return list.flatMap((item: unknown, line): InFile[] => {
    const keys = typeof item === 'object' && item !== null ? Object.keys(item) : [];
    if (keys.includes('joint')) return [];
    const side = SIDES.find((each) => keys.includes(each));
    const one = { line, ...(side && { side }) };
    return side === 'both'
      ? [
          { ...one, isLeft: true },
          { ...one, isLeft: false },
        ]
      : [{ ...one, isLeft: side === 'left' }];
  });
}
