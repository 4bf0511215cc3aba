import type { Finding } from '../finding/finding.js';
import type { Plan } from '../plan.js';
import type { PrintOptions } from '../print/lay.js';
import { exact } from '../print/paper/printer.js';
import { printFindings } from '../print/pdf.js';
import { usualSettings } from '../print/tile/format.js';
import { namesOfPhase } from './ofPhase.js';
import { paperSet, papersOf, type Paper, type PaperOptions } from './papers.js';
import type { PaperSet } from '../sheet/pages.js';
import type { Named, PaperRun } from './run.js';

/** All that a run of papers prints, and how. */
export interface Prepared {
  /** The papers asked for by name; all that the job has where none is named. */
  readonly papers: readonly Paper[];
  readonly set: PaperSet;
  readonly print: PrintOptions;
}

/** What goes into papers beside the plan: what was done, what was found by trial, what a label's code says. */
export type Contents = Pick<PaperOptions, 'labelCode' | 'done' | 'weights'>;

/**
 * Prepares a run of papers: which there are, and what they are printed with, the corrections of the job's printer among
 * it. Terminal and page print the same by it.
 *
 * @returns findings, and nothing to print, where no paper of this job has a name, or something stands against printing.
 */
export function preparePapers(
  plan: Plan,
  { paper, stock, date, margin, only: names, phase, revision }: PaperRun,
  named: Named,
  contents: Contents = {},
): Prepared | { readonly findings: readonly Finding[] } {
  const options = {
    labelStock: stock,
    ...contents,
    ...(revision !== undefined && { revision }),
    ...(phase !== undefined && { phase }),
  };
  const all = papersOf(plan, options);
  const only = phase === undefined ? names : namesOfPhase(plan, all, phase, named('phase'));
  if (only && 'remedy' in only) return { findings: [only] };
  const { set, unknown } = paperSet(plan, options, only);
  if (unknown.length > 0) {
    const what = `there are no papers ${unknown.join(', ')}`;
    return { findings: [{ where: named('only'), what, remedy: `among ${all.map(({ name }) => name).join(', ')}` }] };
  }
  const print = {
    paper,
    date,
    printer: plan.job.printer ?? exact,
    ...(margin !== undefined && { settings: { ...usualSettings, margin } }),
  };
  const findings = printFindings(set, print);
  return findings.length > 0
    ? { findings }
    : { papers: all.filter(({ name }) => only?.includes(name) ?? true), set, print };
}
