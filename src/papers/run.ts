import words from '../../templates/papers.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import type { Units } from '../length/units.js';
import { dayOf, today } from '../print/paper/day.js';
import { labelStockFor, labelStockNamed, labelStocks } from '../print/paper/labelStock.js';
import { rollOf, sheetNamed, sheetNames, type Paper } from '../print/paper/paper.js';
import type { PaperNames } from './choose.js';
import type { LabelStock } from '../sheet/pages.js';
import { lengthOption } from '../typed/lengthOption.js';
import { say } from '../words/say.js';

/** How papers are asked for, in a builder's own words; what is left out is as usual. */
export interface PaperChoices extends PaperNames {
  /** A sheet by its name, or a roll by its width, for all that is at full size. */
  readonly paper?: string | undefined;
  readonly roll?: string | undefined;
  /** What the printer leaves along the edges. */
  readonly margin?: string | undefined;
  readonly labels?: string | undefined;
  /** `2026-05-01`; today where absent. */
  readonly date?: string | undefined;
  readonly revision?: string | undefined;
  /** The phase of the work whose papers are wanted, by its name. */
  readonly phase?: string | undefined;
}

/** What a choice is called where it is made, for findings: `--paper` at a terminal. */
export type Named = (choice: keyof PaperChoices) => string;

/** The same, understood: what one run of papers is made with. Lengths in mm. */
export interface PaperRun {
  readonly paper: Paper;
  readonly stock: LabelStock;
  readonly date: Date;
  /** How lengths were understood, to be said. */
  readonly understood: readonly string[];
  readonly margin?: number;
  readonly names: PaperNames;
  readonly phase?: string;
  readonly revision?: string;
}

/** Plotters take no wider rolls, and no printer leaves a wider margin, mm; common practice, no source. */
const WIDEST_ROLL = 2000;
const WIDEST_MARGIN = 60;

/**
 * Reads how papers are asked for. Of `paper` and `roll` one is named.
 *
 * @param units of the job: what a bare number is in
 * @returns the first thing that was not understood, where there is one.
 */
export function paperRunOf(
  { paper: sheet, roll: across, margin: edge, labels, date: day, revision, phase, ...names }: PaperChoices,
  units: Units,
  named: Named,
): PaperRun | Finding {
  const roll = across === undefined ? undefined : lengthOption(named('roll'), across, units, WIDEST_ROLL);
  if (roll && 'remedy' in roll) return roll;
  const margin = edge === undefined ? undefined : lengthOption(named('margin'), edge, units, WIDEST_MARGIN);
  if (margin && 'remedy' in margin) return margin;
  const paper = roll ? rollOf(roll.mm) : sheetNamed(sheet ?? 'A4');
  if (!paper) return noSuch(named('paper'), say(words.noSheet, { name: sheet ?? '' }), sheetNames);
  const stock = labels === undefined ? labelStockFor(paper) : labelStockNamed(labels);
  if (!stock)
    return noSuch(
      named('labels'),
      say(words.noLabels, { name: labels ?? '' }),
      labelStocks.map(({ name }) => name),
    );
  const date = day === undefined ? today() : dayOf(day);
  if (!date) return { where: named('date'), what: say(words.day.what, { day: day ?? '' }), remedy: words.day.remedy };
  return {
    paper,
    stock,
    date,
    understood: [
      ...(roll ? [say(words.roll, { understood: roll.understood })] : []),
      ...(margin ? [say(words.marginLeft, { understood: margin.understood })] : []),
    ],
    ...(margin && { margin: margin.mm }),
    names,
    ...(phase !== undefined && { phase }),
    ...(revision !== undefined && { revision }),
  };
}

const noSuch = (where: string, what: string, there: readonly string[]): Finding => ({
  where,
  what,
  remedy: say(words.oneOf, { known: there.join(', ') }),
});
