import PDFDocument from 'pdfkit';
import { Writable } from 'node:stream';
import type { Plan } from '../plan.js';
import { fontFiles } from '../print/pen/fonts.js';
import { usualSettings } from '../print/tile/format.js';
import { labelStockFor } from '../print/paper/labelStock.js';
import { layOut } from '../print/page/layOut.js';
import { sheetNamed } from '../print/paper/paper.js';
import { writePdf } from '../print/pdf.js';
import { measureOn } from '../print/pen/pen.js';
import { exact } from '../print/paper/printer.js';
import { usualWords } from '../print/words.js';
import { paperSet } from '../sheet/papers.js';
import { proofOf } from '../proof/proof.js';
import { sayVerdict, verdictOf } from '../verdict/verdict.js';
import type { PaperNews } from './api.js';
import { svgPen } from './svgPen.js';

export interface PapersAsked {
  /** What full-size drawings go on: `A4`, `Letter`. */
  readonly paper: string;
  /** Names of the papers; all where absent. */
  readonly only?: readonly string[];
  readonly date: Date;
}

/** The largest sheet, mm, on which lists and notes go too, as in `print/pdf.ts`. */
const HANDY = 432;

/**
 * Makes the papers of a plan, one page after the other: how many there will be, each page to look at, and at last the
 * file to print. Stops between two pages when the one who listens has gone.
 */
export async function* makePapers(plan: Plan, { paper: name, only, date }: PapersAsked): AsyncGenerator<PaperNews> {
  const paper = sheetNamed(name);
  if (!paper) return yield { kind: 'failed', why: `"${name}" is not a paper this program knows.` };
  const verdict = verdictOf(plan, proofOf(plan));
  if (!verdict.stands) return yield { kind: 'failed', why: sayVerdict(verdict, plan).join('\n') };
  const { set, unknown } = paperSet(plan, { labelStock: labelStockFor(paper) }, only);
  if (unknown.length > 0)
    return yield { kind: 'failed', why: `There is no paper "${unknown.join('", "')}" in this job.` };

  const ruler = new PDFDocument({ autoFirstPage: false });
  const fonts = fontFiles();
  ruler.registerFont('regular', fonts.regular);
  ruler.registerFont('bold', fonts.bold);
  const measure = measureOn(ruler);
  const documents = paper.height <= HANDY ? paper : sheetNamed('A4')!;
  const { leaves, book } = layOut(set, {
    mark: set.mark,
    date,
    words: usualWords,
    measure,
    paper,
    documents,
    settings: usualSettings,
    printer: exact,
  });
  yield { kind: 'laid', pages: leaves.length };
  let title = '';
  for (const [i, leaf] of leaves.entries()) {
    title = leaf.part ?? leaf.bookmark ?? title;
    const pen = svgPen(leaf.width, leaf.height, measure);
    leaf.draw(pen, book, i + 1);
    yield { kind: 'page', page: i + 1, title, svg: pen.finished() };
    await new Promise(setImmediate);
  }
  const parts: Buffer[] = [];
  const out = new Writable({
    write(part: Buffer, _, done) {
      parts.push(part);
      done();
    },
  });
  const printed = await writePdf(set, out, { date, paper });
  if (printed.findings.length > 0) {
    const why = printed.findings.map(({ what, remedy }) => `${what} → ${remedy}`).join('; ');
    return yield { kind: 'failed', why };
  }
  yield { kind: 'file', pages: printed.pages, base64: Buffer.concat(parts).toString('base64') };
}
