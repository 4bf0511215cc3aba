import table from '../../templates/cautions.json' with { type: 'json' };
import type { TextBlock, TextPage } from './pages.js';
import { WORDS } from '../words/say.js';

/** The sheet of cautions, as `templates/cautions.json` has them. */
export function cautionSheet(): TextPage {
  return {
    kind: 'text',
    title: WORDS.cautionsTitle,
    blocks: cautionsOf(table.cautions.map(({ id }) => id)),
  };
}

/** The same in a line each, for the cover. */
export function shortCautions(): TextBlock {
  return { kind: 'caution', title: WORDS.cautionsTitle, lines: WORDS.cover.cautions };
}

/** Some of them, by their names in the template, in its order. */
export function cautionsOf(ids: readonly string[]): TextBlock[] {
  return table.cautions
    .filter(({ id }) => ids.includes(id))
    .map(({ title, lines }): TextBlock => ({ kind: 'caution', title, lines }));
}
