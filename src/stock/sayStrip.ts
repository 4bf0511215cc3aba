import words from '../../templates/stock.json' with { type: 'json' };
import { say } from '../words/say.js';

/** A strip by its name; both of a pair that is alike, where only the right one was looked at. */
export function sayStrip(strip: string, isAlike: boolean): string {
  return isAlike && strip.startsWith('MR') ? say(words.pair, { right: strip, left: strip.replace('MR', 'ML') }) : strip;
}
