import table from '../../templates/cautions.json' with { type: 'json' };
import type { TextBlock, TextPage } from './pages.js';
import { say, WORDS } from '../words/say.js';

/** The sheet of cautions, as `templates/cautions.json` has them. */
export function cautionSheet(): TextPage {
  return {
    kind: 'text',
    title: WORDS.cautionsTitle,
    blocks: table.cautions.map(({ title, lines }): TextBlock => ({ kind: 'caution', title, lines })),
  };
}

/** The same in a line each, for the cover. */
export function shortCautions(): TextBlock {
  return { kind: 'caution', title: WORDS.cautionsTitle, lines: WORDS.cover.cautions };
}

/** Some of them in one frame, by their names in the template, in its order. */
export function cautionsOf(ids: readonly string[]): TextBlock {
  const lines = table.cautions
    .filter(({ id }) => ids.includes(id))
    .map(({ title, lines }) => say(WORDS.cover.cautionLine, { title, words: lines.join(' ') }));
  return { kind: 'caution', title: WORDS.cautionsTitle, lines };
}
