import { documentOf } from '../job/edit/document.js';
import { withItemAdded } from '../job/edit/item.js';
import { valueAt, withValue } from '../job/edit/value.js';
import type { JobFinding } from '../job/finding.js';
import type { Job } from '../job/job.js';
import type { Path } from '../job/mistake/say.js';
import { isOnePlace } from '../job/parts/measured.js';
import type { Measured } from '../job/spec/shaped.js';
import type { ReadJob } from '../job/whole/read.js';
import { parseLength } from '../length/length.js';
import words from '../../templates/measuring.json' with { type: 'json' };
import { say } from '../words/say.js';
import { sayMeasure, valueOf, type Measure } from './measure.js';

/** A job's text and what it reads as. */
export interface Draft {
  readonly text: string;
  readonly job: Job;
}

/** A job's text with one measure more. */
export interface Taken extends Draft {
  /** What the job said of that place before, as it was written. */
  readonly before?: string;
  /** What can be but hardly is, since the measure is in. */
  readonly doubts: readonly JobFinding[];
}

/** Why a measure cannot be taken, and what would be right. */
export interface NotTaken {
  readonly what: string;
  readonly remedy: string;
}

/**
 * Writes a measure into a job's text: in the place of the one that the job has of the same place, or as one more line
 * of its list. Every other character stays as the builder wrote it.
 *
 * @param reread reads a text of this job
 */
export function withMeasure(draft: Draft, measure: Measure, reread: (text: string) => ReadJob): Taken | NotTaken {
  const [key] = valueOf(measure);
  const at = placeIn(draft, measure);
  const before = at && valueAt(documentOf(draft.text), [...at, key]);
  let text: string;
  try {
    text = at ? withValues(draft.text, at, measure) : withItemAdded(draft.text, measure.list, measure.item);
  } catch {
    return unwritable(measure);
  }
  const { job, findings } = reread(text);
  const wrong = findings.find(({ severity }) => severity === 'error');
  if (!job || wrong) return wrong ?? unwritable(measure);
  const known = reread(draft.text).findings.map(said);
  return {
    text,
    job,
    ...(before !== undefined && { before: String(before) }),
    doubts: findings.filter((finding) => !known.includes(said(finding))),
  };
}

function unwritable(measure: Measure): NotTaken {
  const { what, remedy } = words.unwritable;
  return { what: say(what, { list: measure.list }), remedy: say(remedy, { measure: sayMeasure(measure) }) };
}

/** What the job says now of the place of a measure, as it was written. */
export function writtenNow(draft: Draft, measure: Measure): string | undefined {
  const at = placeIn(draft, measure);
  const now = at && valueAt(documentOf(draft.text), [...at, valueOf(measure)[0]]);
  return now === undefined ? undefined : String(now);
}

const said = ({ where, what }: JobFinding) => `${where.path} ${what}`;

function withValues(text: string, at: Path, { item }: Measure): string {
  const kept = ['off', valueOf({ list: 'shaped', item })[0]];
  return item.filter(([key]) => kept.includes(key)).reduce((now, [key, to]) => withValue(now, [...at, key], to), text);
}

/** Where the job has a measure of the same place, the last of them; nothing where it has none. */
function placeIn({ job }: Draft, measure: Measure): Path | undefined {
  const given = Object.fromEntries(measure.item);
  const i =
    measure.list === 'weighings'
      ? (job.weighings ?? []).findLastIndex(({ stage }) => stage === given.stage)
      : shapedPlace(job, measure);
  return i < 0 ? undefined : [measure.list, i];
}

function shapedPlace(job: Job, measure: Measure): number {
  const one = readAs(job, measure);
  return one ? (job.shaped ?? []).findLastIndex((other) => other.kind !== 'scan' && isOnePlace(other, one)) : -1;
}

/** A measure of the shaped board as the job would have it, its value aside; nothing where its place does not read. */
function readAs({ units, board }: Job, measure: Measure): Measured | undefined {
  const given = Object.fromEntries(measure.item);
  const [key] = valueOf(measure);
  if (key === 'deck' || key === 'bottom' || key === 'rail')
    return given.chamber === undefined ? undefined : { kind: 'wall', chamber: given.chamber, wall: key, value: 0 };
  const along = parseLength(given.at ?? given.fromTail ?? '', units);
  const across = parseLength(given.side ?? '0', units);
  if (!along.ok || !across.ok) return undefined;
  const x = given.at === undefined ? board.length - along.value : along.value;
  return key === 'width'
    ? { kind: 'width', x, value: 0 }
    : { kind: 'thickness', x, y: across.value, value: 0, off: 'both' };
}
