import { slotsOf } from '../../chamber/slots.js';
import type { Row } from '../../layup/layup.js';
import type { Plan } from '../../plan.js';
import { WORDS } from '../../words/say.js';

/** One mark of the story pole: where chambers are centred, `s` along the face from the nose tip, mm. */
export interface PoleMark {
  /** `A7`: the pole's edge, and the place from the nose. */
  readonly name: string;
  readonly place: number;
  readonly s: number;
}

/** The pole's edge that serves a row: A for the rows on the grid, B for the shifted ones. */
export function edgeOf(row: Row): string {
  return WORDS.pole.edges[row.parity]!;
}

/** The marks that a row is set out from, nose to tail. */
export function poleMarksOf(plan: Plan, row: Row): PoleMark[] {
  return slotsOf(row, plan.job.chambers, plan.board.length).map(({ place, centre }) => ({
    name: `${edgeOf(row)}${place}`,
    place,
    s: centre,
  }));
}

/**
 * The stations at which the board was measured along its centreline, mm from the nose, tips left out; none of a scan,
 * which is measured everywhere.
 */
export function stationsOf(plan: Plan): number[] {
  if (plan.job.board.scan) return [];
  return plan.job.board.profile.map(({ x }) => x).filter((x) => x > 0 && x < plan.board.length);
}
