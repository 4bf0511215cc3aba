import { layContents } from './contentsPage.js';
import type { Book, Entry, Leaf, Studio, TiledEntry } from './leaf.js';
import type { PaperSet } from './set.js';
import { layTable } from './tablePage.js';
import { layText } from './textPage.js';
import { layTiled } from './tiledPage.js';

/** Lays every document of a set out into pages, and makes the book that contents and page map are drawn from. */
export function layOut(set: PaperSet, studio: Studio): { readonly leaves: readonly Leaf[]; readonly book: Book } {
  const leaves: Leaf[] = [];
  const entries: Entry[] = [];
  const tiled: TiledEntry[] = [];
  let seams = 0;
  for (const page of set.pages) {
    const first = leaves.length + 1;
    const made: readonly Leaf[] = (() => {
      switch (page.kind) {
        case 'tiled': {
          const laid = layTiled(page, studio, seams);
          seams += laid.seams;
          tiled.push({ title: page.title, plan: laid.plan, page: first });
          return laid.leaves;
        }
        case 'table':
          return layTable(page, studio);
        case 'text':
          return layText(page, studio);
        case 'contents':
          return layContents(page, studio, set.pages.length);
        default:
          return [];
      }
    })();
    made.forEach((leaf, i) => {
      if (leaf.bookmark !== undefined) {
        entries.push({ title: leaf.bookmark, page: first + i, name: `page-${String(first + i)}` });
      }
    });
    leaves.push(...made);
  }
  return { leaves, book: { pages: leaves.length, entries, tiled } };
}
