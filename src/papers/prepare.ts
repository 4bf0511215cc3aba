import words from '../../templates/papers.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { sayFinding } from '../finding/say.js';
import type { Plan } from '../plan.js';
import type { PrintOptions } from '../print/lay.js';
import { documentsBeside } from '../print/paper/paper.js';
import { exact } from '../print/paper/printer.js';
import { printFindings } from '../print/pdf.js';
import { usualSettings } from '../print/tile/format.js';
import { choosePapers } from './choose.js';
import { filesOf, type PdfFile } from './files.js';
import { namesOfPhase } from './ofPhase.js';
import type { Paper } from './paper.js';
import { paperSet, papersOf, type PaperOptions } from './papers.js';
import type { Named, PaperRun } from './run.js';
import { say } from '../words/say.js';

/** All that a run of papers makes, and how it is printed. */
export interface Prepared {
  readonly papers: readonly Paper[];
  /** Those that are not made. */
  readonly leftOut: readonly Paper[];
  readonly files: readonly PdfFile[];
  readonly print: PrintOptions;
}

/** What goes into papers beside the plan: what was done, what was found by trial, what a label's code says. */
export type Contents = Pick<PaperOptions, 'labelCode' | 'done' | 'progress' | 'weights'>;

/**
 * Prepares a run of papers: which there are, and what they are printed with, the corrections of the job's printer among
 * it. Terminal and page print the same by it.
 *
 * @returns findings, and nothing to print, where no paper of this job has a name, or something stands against printing.
 */
export function preparePapers(
  plan: Plan,
  { paper, stock, date, margin, names, phase, revision }: PaperRun,
  named: Named,
  contents: Contents = {},
): Prepared | { readonly findings: readonly Finding[] } {
  const options = {
    labelStock: stock,
    page: documentsBeside(paper),
    ...contents,
    ...(revision !== undefined && { revision }),
    ...(phase !== undefined && { phase }),
  };
  const all = papersOf(plan, options);
  const ofPhase = phase === undefined ? undefined : namesOfPhase(plan, all, phase, named('phase'));
  if (ofPhase && 'remedy' in ofPhase) return { findings: [ofPhase] };
  const asked = ofPhase ? { ...names, only: ofPhase } : names;
  const { toPrint, toLookAt, leftOut, wholeSet, unknown } = choosePapers(all, asked);
  if (unknown.length > 0) {
    const what = say(words.unknown.what, { names: unknown.join(', ') });
    const remedy = say(words.unknown.remedy, { known: all.map(({ name }) => name).join(', ') });
    const where = named(NAMING.find((choice) => names[choice]?.some((name) => unknown.includes(name)))!);
    return { findings: [{ where, what, remedy }] };
  }
  const both = (names.without ?? []).filter((name) => [names.only, names.with].some((list) => list?.includes(name)));
  if (both.length > 0)
    return {
      findings: [{ where: named('without'), ...words.both, what: say(words.both.what, { names: both.join(', ') }) }],
    };
  if (toPrint.length === 0) return { findings: [{ where: named('without'), ...words.none }] };
  const set = (papers: readonly Paper[]) => paperSet(plan, options, papers, wholeSet);
  const print = {
    paper,
    date,
    printer: plan.job.printer ?? exact,
    ...(margin !== undefined && { settings: { ...usualSettings, margin } }),
  };
  const files = filesOf(set(toPrint), set(toLookAt), paper);
  const findings = files.flatMap((file) => printFindings(file.set, print));
  return findings.length > 0
    ? { findings: once(findings) }
    : { papers: [...toPrint, ...toLookAt], leftOut, files, print };
}

const NAMING = ['only', 'with', 'without'] as const;

/** What stands against several files is said once. */
const once = (findings: readonly Finding[]): Finding[] =>
  findings.filter((finding, i) => findings.findIndex((other) => sayFinding(other) === sayFinding(finding)) === i);
