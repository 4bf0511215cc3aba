import type { Paper as Sheet } from '../print/paper/paper.js';
import { isHandy } from '../print/paper/paper.js';
import type { PaperSet } from '../sheet/pages.js';

/** One PDF of a run. */
export interface PdfFile {
  readonly name: 'papers.pdf' | 'print-shop.pdf' | 'look.pdf';
  readonly set: PaperSet;
}

/**
 * The PDFs of a run: what is printed, what is only looked at, and, where the full-size sheets go on a roll or on large
 * sheets, these by themselves for a print shop, with the check that tells its scale. None is empty.
 */
export function filesOf(toPrint: PaperSet, toLookAt: PaperSet, sheet: Sheet): PdfFile[] {
  const isForShop = ({ kind }: PaperSet['pages'][number]): boolean => kind === 'tiled' || kind === 'check';
  const part = (name: PdfFile['name'], pages: PaperSet['pages']): PdfFile => ({ name, set: { ...toPrint, pages } });
  const { pages } = toPrint;
  const files = isHandy(sheet)
    ? [part('papers.pdf', pages)]
    : [
        // The map shows sheets that are pieced together on a bench.
        part(
          'papers.pdf',
          pages.filter((page) => !isForShop(page) && page.kind !== 'map'),
        ),
        part('print-shop.pdf', pages.filter(isForShop)),
      ];
  return [...files, part('look.pdf', toLookAt.pages)].filter(({ set }) => set.pages.length > 0);
}
