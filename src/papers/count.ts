import { laySet, type PrintOptions } from '../print/lay.js';
import type { PaperKind } from '../sheet/uses.js';
import type { PdfFile } from './files.js';

/** What a kind of paper takes in one file. */
export interface CountedKind {
  readonly kind: PaperKind;
  readonly pages: number;
  /** What is taped where its pages join, mm. */
  readonly tape: number;
}

export interface CountedFile {
  readonly name: PdfFile['name'];
  readonly pages: number;
  readonly kinds: readonly CountedKind[];
}

/** How many pages a file will have, by kind of paper in the order of printing, without drawing any. */
export function countFile({ name, set }: PdfFile, print: PrintOptions): CountedFile {
  const { documents, pages } = laySet(set, print).book;
  const kinds = [...new Set(documents.map(({ of }) => of))].map((of): CountedKind => {
    const kind = of as PaperKind;
    const own = documents.filter((document) => document.of === kind);
    return {
      kind,
      pages: own.reduce((sum, document) => sum + document.pages, 0),
      tape: own.reduce((sum, document) => sum + document.seams, 0),
    };
  });
  return { name, pages, kinds };
}
