import { documentLeaf, documentSheet, headOf } from './documentSheet.js';
import type { Leaf, PrintContext } from './leaf.js';
import type { ContentsPage } from '../../sheet/pages.js';

const LETTERS = 3;
const SMALL = 2.5;
const PITCH = 6.5;

/**
 * The contents: every document of the set with the page it begins on, linked to it. `entryCount` is how many there will
 * be.
 */
export function layContents(page: ContentsPage, context: PrintContext, entryCount: number): readonly Leaf[] {
  const { room } = documentSheet(context, false);
  const perPage = Math.floor(room.height / PITCH);
  const pages = Math.max(1, Math.ceil(entryCount / perPage));
  return Array.from({ length: pages }, (_, i) =>
    documentLeaf(context, false, headOf(page, i === 0), (pen, { left, right, top }, book) => {
      book.entries.slice(i * perPage, (i + 1) * perPage).forEach((entry, k) => {
        const y = top - (k + 0.5) * PITCH;
        const number = String(entry.page);
        const numberWidth = context.measure(number, false) * LETTERS;
        const begin = left + entry.level * 8;
        const room = right - begin - 20;
        const titleWidth = Math.min(context.measure(entry.title, entry.level === 0) * LETTERS, room);
        pen.text(entry.title, begin, y, { height: LETTERS, fit: room, bold: entry.level === 0 });
        pen.text(number, right, y, { height: LETTERS, align: 'right' });
        const from = begin + titleWidth + 2;
        // Whether its size matters stands behind a document's title.
        const size = entry.size ?? '';
        const sizeWidth = Math.min(context.measure(size, false) * SMALL, Math.max(0, right - numberWidth - 4 - from));
        if (sizeWidth > 0) pen.text(size, from + 1, y, { height: SMALL, fit: sizeWidth });
        const begins = from + (sizeWidth > 0 ? sizeWidth + 3 : 0);
        const to = right - numberWidth - 2;
        if (to > begins) pen.line([begins, y - LETTERS / 2, to, y - LETTERS / 2], { width: 0.25, dashes: [0.4, 1.6] });
        pen.link({ minX: left, minY: y - PITCH / 2, maxX: right, maxY: y + PITCH / 2 }, entry.name);
      });
    }),
  );
}
