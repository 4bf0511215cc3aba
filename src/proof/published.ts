import type { Mesh } from '../board/mesh.js';
import type { Block } from '../block/block.js';
import type { Chamber } from '../chamber/chamber.js';
import type { Dot, Smear } from '../dot/dot.js';
import type { Job } from '../job/job.js';
import type { Joint, Row } from '../layup/layup.js';
import type { Pair } from './plane.js';

/** What a plan publishes, and the rules of its job: all that the proof knows. */
export interface Published {
  readonly job: Pick<Job, 'chambers' | 'keepOuts' | 'jointKeepOuts' | 'dots' | 'blocks'>;
  readonly board: { readonly length: number; readonly proved: Mesh };
  readonly layup: { readonly rows: readonly Row[]; readonly joints: readonly Joint[] };
  readonly chambers: readonly Chamber[];
  readonly glue: { readonly dots: readonly Dot[]; readonly smears: readonly Smear[] };
  readonly blocks: readonly Block[];
}

/** A chamber with its row and the stretch of its face that it takes, mm. */
export interface RoutedChamber {
  readonly chamber: Chamber;
  readonly row: Row;
  readonly from: number;
  readonly to: number;
}

export function routedChambers({ chambers, layup }: Published): RoutedChamber[] {
  const rows = new Map(layup.rows.map((row) => [row.id, row]));
  return chambers.map((chamber) => {
    const s = chamber.profile.map(([each]) => each);
    return { chamber, row: rows.get(chamber.row)!, from: Math.min(...s), to: Math.max(...s) };
  });
}

/** A place of a face in plan, board frame: face frame `s`, `t`, mm. */
export function inPlan({ face: { origin, along, inward } }: Pick<Row, 'face'>, s: number, t: number): Pair {
  return [origin[0] + s * along[0] + t * inward[0], origin[1] + s * along[1] + t * inward[1]];
}

/** The four corners of what a chamber takes in plan, board frame, mm. */
export function footprintOf({ chamber: { depth }, row, from, to }: RoutedChamber): Pair[] {
  return [
    inPlan(row, from, depth[0]),
    inPlan(row, to, depth[0]),
    inPlan(row, to, depth[1]),
    inPlan(row, from, depth[1]),
  ];
}

/**
 * How deep behind a row's face a joint lies at `s`, square to the face, mm: where the line square to the face meets the
 * joint's.
 */
export function depthTo({ at, slope }: Joint, row: Row, s: number): number {
  const [x, y] = inPlan(row, s, 0);
  const { inward } = row.face;
  return (at + slope * x - y) / (inward[1] - slope * inward[0]);
}

/** The joint behind the last member that a row runs through; undefined where the rail ends it. */
export function endJoint({ members, face }: Row): Joint | undefined {
  const last = members[members.length - 1]!;
  return face.inward[1] > 0 ? last.right : last.left;
}
