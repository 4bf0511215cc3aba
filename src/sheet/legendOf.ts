import type { Layer, Legend } from './drawing.js';
import { WORDS } from '../words/say.js';

/** What the kinds of line on a full-size sheet mean, in the builder's words: from `templates/sheets.json`. */
export function legendOf(sheet: keyof typeof WORDS.legend): Legend {
  return Object.entries(WORDS.legend[sheet]) as [Layer, string][];
}
