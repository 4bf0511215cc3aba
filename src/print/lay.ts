import PDFDocument from 'pdfkit';
import { layOut } from './page/layOut.js';
import type { Book, FileBook, Leaf } from './page/leaf.js';
import { documentsBeside, type Paper } from './paper/paper.js';
import { exact, type PrinterFactors } from './paper/printer.js';
import type { Pdf } from './pen/document.js';
import { fontFiles } from './pen/fonts.js';
import { measureOn, type Measure } from './pen/pen.js';
import type { PaperSet } from '../sheet/pages.js';
import { usualSettings, type SheetSettings } from './tile/format.js';
import { usualWords, type Words } from '../words/printed.js';

export interface PrintOptions {
  /** Stands on every sheet and in the file; the same set with the same date gives the same bytes. */
  readonly date: Date;
  /** What full-size drawings are printed on. Lists and notes go on the same sheet if a hand can hold it, else on A4. */
  readonly paper: Paper;
  readonly settings?: SheetSettings;
  readonly printer?: PrinterFactors;
  readonly words?: Words;
  /** Files of the same run, laid out before. */
  readonly beside?: readonly FileBook[];
  /** Called after each page. */
  readonly onProgress?: (done: number, pages: number) => void;
}

/**
 * Lays a set out into pages, to be drawn on the PDF that is opened for it and has none yet, or with any other pen.
 *
 * @param options that `printFindings` has nothing against
 */
export function laySet(
  set: PaperSet,
  { date, paper, settings = usualSettings, printer = exact, words = usualWords, beside = [] }: PrintOptions,
): { readonly doc: Pdf; readonly measure: Measure; readonly leaves: readonly Leaf[]; readonly book: Book } {
  const doc = openDocument(set, date, words);
  const measure = measureOn(doc);
  const documents = documentsBeside(paper);
  const { leaves, book } = layOut(set, { mark: set.mark, date, words, measure, paper, documents, settings, printer });
  return { doc, measure, leaves, book: { ...book, beside } };
}

/** An empty PDF for a set, with the papers' fonts. */
export function openDocument(set: PaperSet, date: Date, words: Words): Pdf {
  const doc = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: words.language,
    displayTitle: true,
    tagged: true,
    // The creation date is part of the file's identity, so it has to be here from the start for the bytes to be the
    // same.
    info: { Title: set.mark.job, Creator: 'chamberwright', Producer: 'chamberwright', CreationDate: date },
  });
  const fonts = fontFiles();
  doc.registerFont('regular', fonts.regular);
  doc.registerFont('bold', fonts.bold);
  // The viewer's preferences are made, and ended, by pdfkit for `displayTitle`; it has no word for the one that matters
  // here (ISO 32000-1, table 150): print at true size, each page on the paper of its size.
  const root = (doc as unknown as { _root: { data: { ViewerPreferences: { data: Record<string, unknown> } } } })._root;
  Object.assign(root.data.ViewerPreferences.data, { PrintScaling: 'None', PickTrayByPDFSize: true });
  return doc;
}
