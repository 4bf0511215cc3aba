import words from '../../templates/sheets.json' with { type: 'json' };

/** What the drawings and lists say, as data: a shop changes `templates/sheets.json`, not code. */
export const WORDS = words;

/**
 * Puts values into a sentence's places: `say('face {row}', { row: 'R2' })`. A place without a value stays as it is, so
 * that it is seen.
 */
export function say(sentence: string, values: Readonly<Record<string, string | number>>): string {
  return sentence.replace(/\{(\w+)\}/g, (place, name: string) => (name in values ? String(values[name]) : place));
}
