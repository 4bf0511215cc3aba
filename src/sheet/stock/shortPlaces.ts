import words from '../../../templates/stock.json' with { type: 'json' };
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import { sayStrip } from '../../stock/sayStrip.js';
import type { ShortPlace } from '../../stock/short.js';
import { say } from '../../words/say.js';

/** A ring around a short place is at least and at most so large, mm. */
const SMALLEST = 30;
const LARGEST = 120;

/** How large the ring is that marks a short place, mm. */
export function shortRadius({ from, to }: ShortPlace): number {
  return Math.min(LARGEST, SMALLEST + (to - from) / 2);
}

/** A short place in one sentence, with the number that stands beside its ring. */
export function sayShort(
  { side, strip, over, at }: ShortPlace,
  number: number,
  isAlike: boolean,
  units: Units,
): string {
  const { ring } = words.sheet;
  return say(over < 0 ? ring.none : ring.some, {
    number,
    side,
    strip: sayStrip(strip, isAlike),
    over: over < 0 ? printAs('stays', -over, units) : printAs('over', over, units),
    at: printLength(at[0], units),
  });
}
