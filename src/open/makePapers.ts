import { Writable } from 'node:stream';
import { sayFinding } from '../finding/say.js';
import { paperRunOf, type PaperChoices } from '../papers/run.js';
import { preparePapers } from '../papers/prepare.js';
import type { Plan } from '../plan.js';
import { laySet } from '../print/lay.js';
import { writePdf } from '../print/pdf.js';
import { proofOf } from '../proof/proof.js';
import { sayVerdict, verdictOf } from '../verdict/verdict.js';
import type { PaperNews } from './api.js';
import { svgPen } from './svgPen.js';

/**
 * Makes the papers of a plan, one page after the other: how many there will be, each page to look at, and at last the
 * file to print. Stops between two pages when the one who listens has gone.
 */
export async function* makePapers(plan: Plan, choices: PaperChoices): AsyncGenerator<PaperNews> {
  const verdict = verdictOf(plan, proofOf(plan));
  if (!verdict.stands) return yield { kind: 'failed', why: sayVerdict(verdict, plan).join('\n') };
  const run = paperRunOf(choices, plan.job.units, asOnPage);
  const made = 'remedy' in run ? { findings: [run] } : preparePapers(plan, run, asOnPage);
  if ('findings' in made) return yield { kind: 'failed', why: made.findings.map(sayFinding).join('\n') };
  const { set, print } = made;
  const { measure, leaves, book } = laySet(set, print);
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
  const { pages } = await writePdf(set, out, print);
  yield { kind: 'file', pages, base64: Buffer.concat(parts).toString('base64') };
}

const asOnPage = (choice: keyof PaperChoices): string => choice;
