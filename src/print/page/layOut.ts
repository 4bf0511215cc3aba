import { layCheck } from './checkPage.js';
import { layContents } from './contentsPage.js';
import { layFigure } from './figurePage.js';
import { layLabels } from './labelsPage.js';
import type { Book, CountedDocument, Entry, Leaf, PrintContext, TiledEntry } from './leaf.js';
import { layMap } from './mapPage.js';
import type { DocumentPage, PaperSet } from '../../sheet/pages.js';
import { layTable } from './tablePage.js';
import { layText } from './textPage.js';
import { layTiled } from './tiledPage.js';

/** Lays every document of a set out into pages, and makes the book that contents and page map are drawn from. */
export function layOut(
  set: PaperSet,
  context: PrintContext,
): { readonly leaves: readonly Leaf[]; readonly book: Book } {
  // Full-size drawings first: the map, which comes before them, needs to know how they lie.
  let seams = 0;
  const tiles = new Map<DocumentPage, ReturnType<typeof layTiled>>();
  for (const page of set.pages) {
    if (page.kind !== 'tiled') continue;
    const laid = layTiled(page, context, seams);
    seams += laid.seams.length;
    tiles.set(page, laid);
  }
  const plans = [...tiles].map(([page, { plan }]): TiledEntry => ({ title: page.title, plan, page: 0 }));

  const entryCount = set.pages.length + [...tiles.values()].reduce((sum, { leaves }) => sum + partsOf(leaves), 0);
  const leaves: Leaf[] = [];
  const entries: Entry[] = [];
  const tiled: TiledEntry[] = [];
  const documents: CountedDocument[] = [];
  for (const page of set.pages) {
    const first = leaves.length + 1;
    if (page.kind === 'tiled') tiled.push({ ...plans[tiled.length]!, page: first });
    const made = page.kind === 'tiled' ? tiles.get(page)!.leaves : layDocument(page, context, entryCount, plans);
    made.forEach((leaf, i) => {
      const name = `page-${String(first + i)}`;
      if (leaf.bookmark !== undefined) {
        const size = { ...(page.use && { size: page.use.size }), ...(page.of !== undefined && { of: page.of }) };
        entries.push({ title: leaf.bookmark, page: first + i, name, level: 0, ...size });
      }
      if (leaf.part !== undefined) entries.push({ title: leaf.part, page: first + i, name, level: 1 });
    });
    leaves.push(...made);
    const joined = tiles.get(page)?.seams ?? [];
    const taped = joined.reduce((sum, { from, to }) => sum + to - from, 0);
    documents.push({ of: page.of ?? page.title, pages: made.length, seams: taped });
  }
  return { leaves, book: { pages: leaves.length, entries, tiled, documents } };
}

const partsOf = (leaves: readonly Leaf[]): number => leaves.filter((leaf) => leaf.part !== undefined).length;

function layDocument(
  page: Exclude<DocumentPage, { kind: 'tiled' }>,
  context: PrintContext,
  entries: number,
  plans: readonly TiledEntry[],
): readonly Leaf[] {
  switch (page.kind) {
    case 'figure':
      return layFigure(page, context);
    case 'table':
      return layTable(page, context);
    case 'text':
      return layText(page, context);
    case 'labels':
      return layLabels(page, context);
    case 'check':
      return layCheck(page, context);
    case 'contents':
      return layContents(page, context, entries);
    case 'map':
      return layMap(page, context, plans);
  }
}
