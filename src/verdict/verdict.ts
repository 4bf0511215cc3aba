import words from '../../templates/verdict.json' with { type: 'json' };
import { PATCHES } from '../board/mesh.js';
import type { Finding, Place } from '../finding/finding.js';
import { sayFinding } from '../finding/say.js';
import { counted } from '../length/counted.js';
import type { Plan } from '../plan.js';
import { noteFinding } from './note.js';
import type { Proof } from '../proof/proof.js';
import { faultFinding } from './fault.js';
import { thinFinding } from './thin.js';
import { questionedFindings } from './questioned.js';
import { say } from '../words/say.js';

/** Whether anybody may rout by a plan. Every command, the papers and the page ask here, so that they agree. */
export interface Verdict {
  readonly stands: boolean;
  /** Why it does not stand. No papers are made of such a plan. */
  readonly refusals: readonly Finding[];
  /** What can hardly be right in what was measured and weighed. The plan stands, but a builder must look first. */
  readonly doubts: readonly Finding<string | Place>[];
}

/**
 * Gathers everything that is against a plan: walls too thin and other rules broken, chambers out of the cutter's reach,
 * dots in the way of the finished surface, a dotted joint without dots, no chamber at all; and measures, weighings and
 * names that can hardly be right.
 *
 * @param proof what proving the plan has found: `proofOf`, or `asPlanned` for those who ask while a slider moves
 */
export function verdictOf(plan: Plan, { thin, faults }: Proof): Verdict {
  const { notes, job, layup, glue, chambers, doubts } = plan;
  const barred = notes.filter(
    ({ kind, why }) =>
      (kind === 'rout' && ['reach', 'gone', 'elsewhere'].includes(why)) ||
      (kind === 'glue' && (why === 'margin' || why === 'off-face')),
  );
  const bare = layup.joints.filter(({ id, kind }) => kind === 'dotted' && !glue.dots.some(({ joint }) => joint === id));
  const refusals = [
    ...thin.map((wall) => thinFinding(wall, job.units)),
    ...faults.map((fault) => faultFinding(fault, job.units)),
    ...barred.flatMap((note) => noteFinding(note, job.units) ?? []),
    ...bare.map(({ id }) => ({ ...words['no-dots'], where: say(words['no-dots'].where, { joint: id }) })),
    ...(chambers.length === 0 ? [words['no-chambers']] : []),
  ];
  return {
    stands: refusals.length === 0,
    refusals,
    doubts: [
      ...doubts,
      ...questionedFindings(plan),
      ...notes.filter(({ kind }) => kind === 'measured').flatMap((note) => noteFinding(note, job.units) ?? []),
    ],
  };
}

/**
 * The walls too thin by the plan's own figures: the same as proving them once more, at once. Nothing else is proved.
 */
export function asPlanned({ chambers, asked }: Plan): Proof {
  const thin = chambers.flatMap(({ id, wall, at }) =>
    PATCHES.filter((patch) => !(wall[patch] >= asked[patch])).map((patch) => ({
      chamber: id,
      patch,
      wall: wall[patch],
      asked: asked[patch],
      at: at[patch],
    })),
  );
  return { thin, faults: [] };
}

/** Whether there is nothing that a builder must act on first. */
export const isWell = ({ stands, doubts }: Verdict): boolean => stands && doubts.length === 0;

/**
 * A verdict in lines, the same wherever it is said: what is against the plan, what to look at, and whether it stands.
 */
export function sayVerdict({ stands, refusals, doubts }: Verdict, { chambers }: Plan): string[] {
  return [
    ...(doubts.length > 0 ? [words.look, ...doubts.map((doubt) => `  ${sayFinding(doubt)}`)] : []),
    ...refusals.map(sayFinding),
    stands ? say(words.sound, { count: counted(chambers.length, 'chamber') }) : words.refused,
  ];
}
