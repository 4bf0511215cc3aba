import words from '../../templates/words.json' with { type: 'json' };

/** What the printed sheets say, as data: a shop changes `templates/words.json`, not code. */
export type Words = typeof words;

export const usualWords: Words = words;
