import type { Pdf } from './pen/document.js';
import { once } from 'node:events';
import type { Writable } from 'node:stream';
import type { Finding } from '../finding/finding.js';
import { fontFindings } from './pen/fontFindings.js';
import { formatsOf, usualSettings } from './tile/format.js';
import type { Book } from './page/leaf.js';
import { labelFindings } from './page/labelsPage.js';
import { laySet, openDocument, type PrintOptions } from './lay.js';
import { POINTS_PER_MM } from './paper/paper.js';
import { penOn } from './pen/pen.js';
import { exact, printerFindings } from './paper/printer.js';
import type { PaperSet } from '../sheet/pages.js';
import { tagsOn } from './pen/tags.js';
import { usualWords } from '../words/printed.js';

/*
 * The doors of this room. A `Drawing` (sheet/drawing.ts) goes in at each of the first three, so they cannot disagree.
 *
 *   writePdf(set, out, options)   a PaperSet (sheet/pages.ts) to a stream, page by page
 *   svgOf(drawing)                svg.ts: true size, layers as groups
 *   dxfOf(drawing)                dxf.ts: { dxf } or { findings }; cutterFileName (fileName.ts) names the file
 *   csvOf(rows)                   csv.ts
 *   sheetNamed, rollOf            paper.ts: what to print on
 *   labelStockNamed               labelStock.ts: from templates/
 *   nest, formatsOf               nest.ts, format.ts: how many sheets, without printing
 */

/** What was written: nothing, when there are findings. */
export interface Printed {
  readonly findings: readonly Finding[];
  readonly pages: number;
  /** The full-size documents, with their sheets and the bound no layout goes below. */
  readonly tiled: readonly { readonly title: string; readonly sheets: number; readonly areaBound: number }[];
  /** For what tells pages of this file in another. */
  readonly book?: Book;
}

/**
 * Writes a set as one PDF: bookmarks, page numbers, an embedded font, tagged for readers that speak, the viewer told
 * not to scale. Pages are made one at a time, as fast as `out` takes them. `out` is ended.
 *
 * @returns findings, and writes nothing at all, when the paper, its margins or the printer's factors will not do.
 * @throws when a drawing has a coordinate that is not a number, or `out` fails.
 */
export async function writePdf(set: PaperSet, out: Writable, options: PrintOptions): Promise<Printed> {
  const findings = printFindings(set, options);
  if (findings.length > 0) return { findings, pages: 0, tiled: [] };

  const { doc, measure, leaves, book } = laySet(set, options);

  const failed = once(out, 'error').then(([error]) => {
    throw error as Error;
  });
  failed.catch(() => undefined);
  const finished = once(out, 'finish');
  finished.catch(() => undefined);
  doc.pipe(out);
  labelPages(doc, book);
  const tags = tagsOn(doc);
  let document = doc.outline;
  for (const [i, leaf] of leaves.entries()) {
    const size: [number, number] = [
      (leaf.width / leaf.factors.x) * POINTS_PER_MM,
      (leaf.height / leaf.factors.y) * POINTS_PER_MM,
    ];
    doc.addPage({ size, margin: 0 });
    document = bookmark(doc, book, i + 1, document);
    if (leaf.bookmark !== undefined) tags.begin(leaf.bookmark);
    const pen = penOn(doc, measure, leaf.factors, tags);
    leaf.draw(pen, book, i + 1);
    pen.finish();
    options.onProgress?.(i + 1, leaves.length);
    // Lets the stream run, and waits for it when it is behind.
    await Promise.race([failed, out.writableNeedDrain ? once(out, 'drain') : new Promise(setImmediate)]);
  }
  tags.end();
  doc.end();
  await Promise.race([failed, finished]);
  const tiled = book.tiled.map(({ title, plan }) => ({ title, sheets: plan.sheets, areaBound: plan.areaBound }));
  return { findings: [], pages: leaves.length, tiled, book };
}

/** All that stands against printing a set with these options: `writePdf` writes nothing while there is any. */
export function printFindings(set: PaperSet, options: PrintOptions): readonly Finding[] {
  const { paper, date, settings = usualSettings, printer = exact, words = usualWords } = options;
  return [
    ...printerFindings(printer),
    ...formatsOf(paper, settings).findings,
    ...set.pages.flatMap((page) => (page.kind === 'labels' ? labelFindings(page, settings.margin) : [])),
    ...fontFindings(set, openDocument(set, date, words)),
  ];
}

/**
 * What a viewer calls each page (ISO 32000-1, 12.4.2): its document's title and, where it has several, its number
 * there.
 */
function labelPages(doc: Pdf, { entries, pages }: Book): void {
  const begins = entries.filter(({ level }) => level === 0);
  const labels = begins.flatMap(({ title, page }, i) => {
    const count = (begins[i + 1]?.page ?? pages + 1) - page;
    // pdfkit writes String objects as text, plain strings as names.
    return [page - 1, count > 1 ? { S: 'D', P: new String(`${title} · `) } : { P: new String(title) }];
  });
  const root = (doc as unknown as { _root: { data: Record<string, unknown> } })._root;
  root.data.PageLabels = { Nums: labels };
}

/**
 * Every document, and every part of one, is a bookmark and a place that the contents link to.
 *
 * @param under the bookmark of the document before, which parts go under.
 * @returns that of the latest document.
 */
function bookmark(doc: Pdf, book: Book, page: number, under: PDFKit.PDFOutline): PDFKit.PDFOutline {
  let latest = under;
  for (const entry of book.entries) {
    if (entry.page !== page) continue;
    if (entry.level === 0) latest = doc.outline.addItem(entry.title);
    else latest.addItem(entry.title);
    doc.addNamedDestination(entry.name, 'Fit');
  }
  return latest;
}
