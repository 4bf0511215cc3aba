import type { GluingJob } from '../dot/gluingJob.js';
import { slotsOf } from '../chamber/slots.js';
import { dotName, jointName, opposite, placeName, rowName } from '../job/names.js';
import type { Layup } from '../layup/layup.js';
import { mirrorOf } from './alike.js';
import type { Arrangement } from './arrangement.js';

/** What the mirror image on the left is called of everything on the right: rows, places, chambers, joints, dots. */
export interface LeftNames {
  readonly has: (right: string) => boolean;
  /** The name itself of what has no mirror image. */
  readonly of: (right: string) => string;
  /** Of a keep-out on either side. */
  readonly ofKeepOut: (name: string) => string;
}

/** @param half what was planned for the centre and the right side of the board */
export function leftNames({ layup, chambers, glue }: Arrangement, whole: Layup, job: GluingJob): LeftNames {
  const names = new Map<string, string>();
  for (const row of layup.rows) {
    if (row.side !== 'R') continue;
    const left = rowName(opposite(row));
    names.set(row.id, left);
    for (const { place } of slotsOf(row, job.chambers, job.board.length))
      names.set(placeName(row.id, place), placeName(left, place));
    // A part of a place has its letter behind the place's name; of one that was left solid there is only a note.
    const parts = [
      ...chambers.chambers.filter((each) => each.row === row.id).map(({ id }) => id),
      ...chambers.notes.filter((each) => each.row === row.id && each.place !== undefined).map(({ where }) => where),
    ];
    for (const id of parts) names.set(id, left + id.slice(row.id.length));
  }
  for (const joint of whole.joints) {
    if (joint.side !== 'R') continue;
    const left = opposite(joint);
    names.set(joint.id, jointName(left));
    glue.dots.filter((dot) => dot.joint === joint.id).forEach(({ id }, i) => names.set(id, dotName(left, i + 1)));
  }
  const { keepOuts } = job;
  const keepOutNames = new Map(keepOuts.map((each) => [each.name, mirrorOf(each, keepOuts)?.name ?? each.name]));
  return {
    has: (right) => names.has(right),
    of: (right) => names.get(right) ?? right,
    ofKeepOut: (name) => keepOutNames.get(name) ?? name,
  };
}
