import { Writable } from 'node:stream';
import { sayFinding } from '../finding/say.js';
import { printLength } from '../length/length.js';
import { countFile, type CountedKind } from '../papers/count.js';
import { paperRunOf, type PaperChoices } from '../papers/run.js';
import { preparePapers } from '../papers/prepare.js';
import { foundByTrial } from '../papers/trials.js';
import type { Plan } from '../plan.js';
import { laySet } from '../print/lay.js';
import type { FileBook } from '../print/page/leaf.js';
import { labelStocks } from '../print/paper/labelStock.js';
import { writePdf } from '../print/pdf.js';
import { proofOf } from '../proof/proof.js';
import { sayVerdict, verdictOf } from '../verdict/verdict.js';
import { phasesWithPapers } from '../papers/ofPhase.js';
import { papersOf } from '../papers/papers.js';
import { kindName } from '../sheet/uses.js';
import type { KindOfPaper, PaperNames, PaperNews } from './api.js';
import { svgPen } from './svgPen.js';

/**
 * Makes the papers of a plan, one page after the other: how many there will be, each page to look at, and at last the
 * file to print. Stops between two pages when the one who listens has gone.
 */
export async function* makePapers(plan: Plan, choices: PaperChoices): AsyncGenerator<PaperNews> {
  const verdict = verdictOf(plan, proofOf(plan));
  if (!verdict.stands) return yield { kind: 'failed', why: sayVerdict(verdict, plan).join('\n') };
  const run = paperRunOf(choices, plan.job.units, asOnPage);
  const made =
    'remedy' in run ? { findings: [run] } : preparePapers(plan, run, asOnPage, { weights: foundByTrial(plan) });
  if ('findings' in made) return yield { kind: 'failed', why: made.findings.map(sayFinding).join('\n') };
  const { files, print } = made;
  const beside: FileBook[] = [];
  const laid = files.map(({ name, set }) => {
    const own = laySet(set, { ...print, beside: [...beside] });
    beside.push({ name, book: own.book });
    return { name, set, ...own };
  });
  yield { kind: 'laid', pages: laid.reduce((sum, { leaves }) => sum + leaves.length, 0) };
  let page = 0;
  for (const { measure, leaves, book } of laid) {
    let title = '';
    for (const [i, leaf] of leaves.entries()) {
      title = leaf.part ?? leaf.bookmark ?? title;
      const pen = svgPen(leaf.width, leaf.height, measure);
      leaf.draw(pen, book, i + 1);
      yield { kind: 'page', page: (page += 1), title, svg: pen.finished() };
      await new Promise(setImmediate);
    }
  }
  for (const { name, set, book } of laid) {
    const parts: Buffer[] = [];
    const out = new Writable({
      write(part: Buffer, _, done) {
        parts.push(part);
        done();
      },
    });
    const { pages } = await writePdf(set, out, { ...print, beside: book.beside ?? [] });
    yield { kind: 'file', name, pages, base64: Buffer.concat(parts).toString('base64') };
  }
}

/**
 * The kinds of paper that a job has, in the order of printing, with what each takes on such paper: of those that are
 * usual in the set, of the others each by itself; and the phases of its work.
 *
 * @param phase the one whose papers are wanted: of those what they take in it
 */
export function paperNamesOf(plan: Plan, paper: string, phase?: string): Omit<PaperNames, 'papers'> {
  const weights = foundByTrial(plan);
  const count = (choices: PaperChoices): CountedKind[] => {
    const run = paperRunOf({ ...choices, paper }, plan.job.units, asOnPage);
    const made = 'remedy' in run ? undefined : preparePapers(plan, run, asOnPage, { weights });
    return made && 'files' in made ? made.files.flatMap((file) => [...countFile(file, made.print).kinds]) : [];
  };
  const papers = papersOf(plan, { labelStock: labelStocks[0]! });
  const usual = [...(phase === undefined ? [] : count({ phase })), ...count({})];
  const kinds = [...new Set(papers.map(({ kind }) => kind))].map((kind): KindOfPaper => {
    const own = papers.filter((each) => each.kind === kind);
    const { goes } = own[0]!;
    const called = kindName(kind);
    const counted = (goes === 'on request' ? count({ only: [kind] }) : usual).find((each) => each.kind === kind);
    const { pages = 0, tape = 0 } = counted ?? {};
    return {
      kind: called,
      names: own.map(({ name }) => name),
      goes,
      pages,
      ...(tape > 0 && { tape: printLength(tape, plan.job.units, 'feet') }),
    };
  });
  return { kinds, phases: phasesWithPapers(plan, papers) };
}

const asOnPage = (choice: keyof PaperChoices): string => choice;
