import type { Plan } from '../../src/plan.js';
import { labelStocks } from '../../src/print/paper/labelStock.js';
import { choosePapers, type PaperNames } from '../../src/papers/choose.js';
import { preparePapers, type Prepared } from '../../src/papers/prepare.js';
import { paperRunOf, type PaperChoices } from '../../src/papers/run.js';
import { sayFinding } from '../../src/finding/say.js';
import type { Drawing } from '../../src/sheet/drawing.js';
import type { PaperSet } from '../../src/sheet/pages.js';
import { drawingsOf, paperSet, papersOf, type PaperOptions } from '../../src/papers/papers.js';

/** What a run makes of a plan's papers, printed or only looked at, as one set. */
export function setOf(plan: Plan, names: PaperNames = {}, more: Partial<PaperOptions> = {}): PaperSet {
  const options = { labelStock: labelStocks[0]!, ...more };
  const { toPrint, toLookAt, wholeSet } = choosePapers(papersOf(plan, options), names);
  return paperSet(plan, options, [...toPrint, ...toLookAt], wholeSet);
}

/** Every paper that a plan has, those made on request among them, but for a guide for each chamber. */
export const wholeSetOf = (plan: Plan): PaperSet => setOf(plan, { with: requested(plan) });

/** What is at full size of all these. */
export const fullSizeOf = (plan: Plan): readonly Drawing[] =>
  drawingsOf(choosePapers(papersOf(plan, { labelStock: labelStocks[0]! }), { with: requested(plan) }).toPrint);

const requested = (plan: Plan): string[] =>
  papersOf(plan, { labelStock: labelStocks[0]! })
    .filter(({ kind, goes }) => goes === 'on request' && kind !== 'guides')
    .map(({ name }) => name);

const asOption = (choice: string): string => `--${choice}`;

/** The files of a run that makes every paper, as command and page make them. */
export function filesOfPlan(plan: Plan, choices: PaperChoices): Prepared {
  const run = paperRunOf({ ...choices, with: requested(plan) }, plan.job.units, asOption);
  const prepared = 'remedy' in run ? { findings: [run] } : preparePapers(plan, run, asOption);
  if ('findings' in prepared) throw new Error(prepared.findings.map(sayFinding).join('\n'));
  return prepared;
}
