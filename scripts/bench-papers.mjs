// How fast papers are made: the full set of the board with six stringers, from Plan to PDF on disk, and the same
// full-size SVG sheets printed to PDF by headless Chromium in the same run. Run by: node scripts/bench-papers.mjs
// (after `npm run build`; needs chromium).
import { createWriteStream, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { readJob } from '../dist/src/job/whole/read.js';
import { planOf } from '../dist/src/plan.js';
import { labelStocks } from '../dist/src/print/paper/labelStock.js';
import { sheetNamed } from '../dist/src/print/paper/paper.js';
import { writePdf } from '../dist/src/print/pdf.js';
import { svgOf } from '../dist/src/print/svg/svg.js';
import { choosePapers } from '../dist/src/papers/choose.js';
import { drawingsOf, paperSet, papersOf } from '../dist/src/papers/papers.js';

const ROUNDS = 5;
const samples = fileURLToPath(new URL('../samples/', import.meta.url));
const { job } = readJob(readFileSync(`${samples}tarn-rescue.yaml`, 'utf8'), 'tarn-rescue.yaml', () => undefined);
const plan = planOf(job);
const work = mkdtempSync(join(tmpdir(), 'bench-papers-'));
const options = { date: new Date('2026-05-01'), paper: sheetNamed('A4') };

async function median(run) {
  const times = [];
  for (let i = -1; i < ROUNDS; i++) {
    const start = performance.now();
    await run();
    if (i >= 0) times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[times.length >> 1];
}

let pages = 0;
const file = join(work, 'papers.pdf');
const whole = await median(async () => {
  const labelStock = labelStocks[0];
  const { toPrint, toLookAt } = choosePapers(papersOf(plan, { labelStock }));
  const set = paperSet(plan, { labelStock }, [...toPrint, ...toLookAt]);
  ({ pages } = await writePdf(set, createWriteStream(file), options));
});
console.log(
  `full set, Plan to PDF on disk: ${(whole / 1000).toFixed(2)} s, ${pages} pages, ${(statSync(file).size / 1e6).toFixed(1)} MB`,
);

const all = papersOf(plan, { labelStock: labelStocks[0] });
const drawings = drawingsOf(choosePapers(all, { with: ['dots-full'] }).toPrint);
const sheets = drawings.map((drawing, i) => {
  const svg = join(work, `${i}.svg`);
  writeFileSync(svg, svgOf(drawing));
  return svg;
});
const set = { mark: { job: job.name }, pages: drawings.map((d) => ({ kind: 'tiled', title: d.title, drawings: [d] })) };
const ours = await median(() => writePdf(set, createWriteStream(join(work, 'ours.pdf')), options));
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
const page = await browser.newPage();
const theirs = await median(async () => {
  for (const svg of sheets) {
    await page.goto(pathToFileURL(svg).href);
    await page.pdf({ path: join(work, 'theirs.pdf'), width: '210mm', height: '297mm' });
  }
});
await browser.close();
console.log(
  `the ${drawings.length} full-size sheets alone, tiled: ${(ours / 1000).toFixed(2)} s; printed by headless Chromium, untiled: ${(theirs / 1000).toFixed(2)} s`,
);
console.log(`ratio: ${(theirs / ours).toFixed(1)} times faster`);
rmSync(work, { recursive: true });
