import words from '../../../templates/weights.json' with { type: 'json' };
import { say } from '../../words/say.js';

/** What the papers about weight say, as data: a shop changes `templates/weights.json`, not code. */
export const WEIGHT_WORDS = words;

/** An unknown in words: `density of redwood`, `resin in the cloth, of what was meant`. */
export function unknownInWords(id: string): string {
  return inWords(words.unknown, id);
}

/** What an unknown weighs, in words: `redwood`, `resin in the cloth`. */
export function partInWords(id: string): string {
  return inWords(words.part, id);
}

function inWords(sentences: typeof words.unknown, id: string): string {
  const [kind, ...name] = id.split(':') as [keyof typeof words.unknown, ...string[]];
  return say(sentences[kind], { name: name.join(':') });
}
