import type { Units } from '../../length/units.js';
import { printLength, sameNumber } from '../../length/length.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';

/** The two ways to say where along the board something is; exactly one is given. */
export function alongSchema(q: Quantities, what: string) {
  const bounds = { least: 0, most: 8000, because: 'it lies on the board, and no board is longer' };
  return {
    at: q.length(`${what} from the nose tip, straight, not along the curve`, bounds).optional(),
    fromTail: q.length(`${what} from the end of the tail, straight, not along the curve`, bounds).optional(),
  };
}

/**
 * Where along the board something is, mm from the nose tip. Says when it is given twice or not at all, or lies off the
 * board.
 *
 * @returns not-a-number when it is not known
 */
export function placeAlong(
  file: { readonly at?: number | undefined; readonly fromTail?: number | undefined },
  length: number,
  units: Units,
  say: Say,
): number {
  if (file.at !== undefined && file.fromTail !== undefined) {
    say.error(['fromTail'], 'its place is given twice, as "at" and as "fromTail"', 'keep one of them');
    return NaN;
  }
  if (file.at === undefined && file.fromTail === undefined) {
    say.error([], 'it has no place along the board', 'add "at" (from the nose) or "fromTail"');
    return NaN;
  }
  const x = file.at ?? sameNumber(length - file.fromTail!);
  if (!(x < 0 || x > length)) return x;
  const past =
    x < 0 ? `${printLength(-x, units)} before the nose` : `${printLength(x - length, units)} behind the tail`;
  say.error(
    [file.at === undefined ? 'fromTail' : 'at'],
    `it lies off the board, ${past}`,
    `a place from 0 to ${printLength(length, units, 'feet')}`,
  );
  return NaN;
}
