import type { Paper as Sheet } from '../print/paper/paper.js';
import { isHandy } from '../print/paper/paper.js';
import type { PaperSet } from '../sheet/pages.js';
import type { PaperKind } from '../sheet/uses.js';

/** One PDF of a run. */
export interface PdfFile {
  readonly name: 'papers.pdf' | 'print-shop.pdf' | 'book.pdf' | 'look.pdf';
  readonly set: PaperSet;
}

/** What is read from phase to phase, on paper or on a screen: nothing is marked, cut or ticked off block by block. */
const READ: readonly PaperKind[] = ['book', 'closing', 'finish'];

export const isRead = (kind: PaperKind): boolean => READ.includes(kind);

/**
 * The PDFs of a run: what is worked by; what is read; what is only looked at; and, where the full-size sheets go on a
 * roll or on large sheets, these by themselves for a print shop, with the check that tells its scale. None is empty.
 * The book tells pages of those before it.
 */
export function filesOf(toPrint: PaperSet, toLookAt: PaperSet, sheet: Sheet): PdfFile[] {
  const isForShop = ({ kind }: PaperSet['pages'][number]): boolean => kind === 'tiled' || kind === 'check';
  const part = (name: PdfFile['name'], pages: PaperSet['pages']): PdfFile => ({ name, set: { ...toPrint, pages } });
  const isOfBook = ({ of }: PaperSet['pages'][number]): boolean => of !== undefined && isRead(of as PaperKind);
  const pages = toPrint.pages.filter((page) => !isOfBook(page));
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
  return [...files, part('book.pdf', toPrint.pages.filter(isOfBook)), part('look.pdf', toLookAt.pages)].filter(
    ({ set }) => set.pages.length > 0,
  );
}
