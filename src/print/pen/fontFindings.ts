import sentences from '../../../templates/printing.json' with { type: 'json' };
import type { Pdf } from './document.js';
import type { Finding } from '../../finding/finding.js';
import { oneLine } from '../trace/lettering.js';
import type { PaperSet } from '../../sheet/pages.js';
import { say } from '../../words/say.js';

/** The part of an opened font that tells which characters it has (fontkit, which pdfkit opens fonts with). */
interface OpenedFont {
  readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } };
}

/**
 * Words with characters that the papers' font lacks: they would be printed as empty boxes. One finding for each
 * character.
 */
export function fontFindings(set: PaperSet, doc: Pdf): readonly Finding[] {
  doc.font('regular');
  const { font } = (doc as unknown as OpenedFont)._font;
  const lacking = new Map<string, string>();
  // The font is asked once for each character: there are many words and few characters.
  const asked = new Set<string>();
  const seen = new Set<unknown>();
  const look = (value: unknown): void => {
    if (typeof value !== 'string' && typeof value !== 'object') return;
    // Of a shape, and there are tens of thousands, only its words.
    if (isShape(value)) return look(value.text);
    if (seen.has(value)) return;
    seen.add(value);
    if (typeof value === 'string') {
      for (const letter of oneLine(value)) {
        if (asked.has(letter)) continue;
        asked.add(letter);
        if (!font.hasGlyphForCodePoint(letter.codePointAt(0)!)) lacking.set(letter, value);
      }
    } else if (Array.isArray(value)) value.forEach(look);
    else if (typeof value === 'object' && value !== null) {
      for (const [key, each] of Object.entries(value)) if (key !== 'vertices' && key !== 'code') look(each);
    }
  };
  look(set);
  return [...lacking].map(([letter, words]) => ({
    where: 'words',
    what: say(sentences.letter.what, { letter, words }),
    remedy: sentences.letter.remedy,
  }));
}

const isShape = (value: unknown): value is { readonly text?: string } =>
  typeof value === 'object' && value !== null && 'layer' in value && 'kind' in value;
