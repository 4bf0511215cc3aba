import { expect, test } from 'vitest';
import { seeded } from '../../src/block/nest/seeded.js';
import { readJob } from '../../src/job/whole/read.js';
import { planOf } from '../../src/plan.js';
import { dxfOf } from '../../src/print/dxf/dxf.js';
import { labelStocks } from '../../src/print/paper/labelStock.js';
import { rollOf, sheetNamed } from '../../src/print/paper/paper.js';
import { printFindings } from '../../src/print/pdf.js';
import { svgOf } from '../../src/print/svg/svg.js';
import { papersOf } from '../../src/papers/papers.js';
import { hardJob, TABLE } from '../random/hardJob.js';
import { fullSizeOf, setOf } from '../papers/wholeSet.js';
import { printed } from './printed.js';

/** How many boards, and from which seed; `HARD` and `SEED` set them. */
const BOARDS = Number(process.env['HARD'] ?? 6);
const SEED = Number(process.env['SEED'] ?? 2026);

const PAPERS = [...['A4', 'Letter', 'A3', 'A1'].map((name) => sheetNamed(name)!), rollOf(610), rollOf(914.4)];

test(
  `all papers of ${BOARDS} hard boards (seed ${SEED}) are made, on any paper, or refused with a place and a cure`,
  async () => {
    const found: string[] = [];
    for (let i = 0, boards = 0; boards < BOARDS; i++) {
      const random = seeded(SEED * 100_003 + i);
      const { file, table } = hardJob(random);
      const { job } = readJob(JSON.stringify(file), 'hard.json', (name) => (name === TABLE ? table : undefined));
      if (!job) continue;
      boards++;
      const plan = planOf(job);
      const paper = PAPERS[Math.floor(random() * PAPERS.length)]!;
      const set = setOf(plan, { only: papersOf(plan, { labelStock: labelStocks[0]! }).map(({ name }) => name) });
      const unfit = printFindings(set, { paper, date: new Date(0) });
      for (const { where, what, remedy } of unfit)
        expect([where, what, remedy].every((said) => said !== '')).toBe(true);
      const which = `board ${i} of seed ${SEED} on ${paper.name}`;
      try {
        if (unfit.length === 0) expect((await printed(set.pages, { paper }, set.mark)).pages).toBeGreaterThan(5);
        for (const drawing of fullSizeOf(plan)) {
          expect(svgOf(drawing)).not.toMatch(/NaN|Infinity|undefined/);
          const traced = dxfOf(drawing);
          if (!('dxf' in traced)) found.push(`${which}: ${drawing.id}: ${JSON.stringify(traced.findings)}`);
        }
      } catch (error) {
        found.push(`${which}: ${String((error as Error).stack).slice(0, 600)}`);
      }
    }
    expect(found).toEqual([]);
  },
  24 * 3_600_000,
);
