// What the papers of the samples take, the build book left out: the README's table. Pages to print on each paper, how
// many of them are full-size sheets, and the fewest that any layout of what these show could take by area. Run by:
// node scripts/bench-pages.mjs (after `npm run build`).
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readJob } from '../dist/src/job/whole/read.js';
import { choosePapers } from '../dist/src/papers/choose.js';
import { filesOf } from '../dist/src/papers/files.js';
import { paperSet, papersOf } from '../dist/src/papers/papers.js';
import { planOf } from '../dist/src/plan.js';
import { laySet } from '../dist/src/print/lay.js';
import { labelStockFor } from '../dist/src/print/paper/labelStock.js';
import { documentsBeside, rollOf, sheetNamed } from '../dist/src/print/paper/paper.js';

const samples = fileURLToPath(new URL('../samples/', import.meta.url));
const papers = [...['A4', 'Letter', 'A3', 'A1'].map(sheetNamed), rollOf(610)];

console.log(`| board | ${papers.map(({ name }) => name).join(' | ')} |`);
console.log(`| --- | ${papers.map(() => '--:').join(' | ')} |`);
for (const name of ['tarn-rescue', 'mere-prone', 'fell-short', 'beck-guard']) {
  const file = `${name}.yaml`;
  const beside = (table) => readFileSync(samples + table, 'utf8');
  const plan = planOf(readJob(readFileSync(samples + file, 'utf8'), file, beside).job);
  const cells = papers.map((paper) => {
    const options = { labelStock: labelStockFor(paper), page: documentsBeside(paper) };
    const { toPrint } = choosePapers(papersOf(plan, options));
    const set = paperSet(plan, options, toPrint);
    const books = filesOf(set, { ...set, pages: [] }, paper)
      .filter(({ name }) => name !== 'book.pdf')
      .map((file) => laySet(file.set, { paper, date: new Date(0) }).book);
    const tiled = books.flatMap((book) => book.tiled);
    const sum = (what) => tiled.reduce((so, { plan: laid }) => so + laid[what], 0);
    return `${books.reduce((so, { pages }) => so + pages, 0)}: ${sum('sheets')} (${sum('areaBound')})`;
  });
  console.log(`| ${name} | ${cells.join(' | ')} |`);
}
