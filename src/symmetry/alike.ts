import type { GluingJob } from '../dot/gluingJob.js';
import type { KeepOutSpec } from '../job/job.js';
import type { Layup } from '../layup/layup.js';

/** Whether the left side of a board is the mirror image of the right in everything that chambers and glue depend on. */
export function isAlike(layup: Layup, job: GluingJob): boolean {
  const { board, glueUp, shaped, keepOuts, jointKeepOuts, dots } = job;
  const oneSided = board.left ?? glueUp.left ?? shaped?.[0] ?? jointKeepOuts[0] ?? dots.glued[0];
  return (
    oneSided === undefined &&
    keepOuts.every((keepOut) => mirrorOf(keepOut, keepOuts)) &&
    isPaired(layup) &&
    isStraightInTheMiddle(layup)
  );
}

/** The keep-out that is its mirror image on the other side of the board; itself where it is its own. */
export function mirrorOf(keepOut: KeepOutSpec, all: readonly KeepOutSpec[]): KeepOutSpec | undefined {
  if (keepOut.kind === 'polygon') return undefined;
  const { y } = keepOut;
  if (y === 0) return keepOut;
  // Names differ from side to side; everything else must be there twice.
  const form = (each: object, at: number) => JSON.stringify({ ...each, name: '', y: at });
  return all.find((other) => other.kind !== 'polygon' && form(other, other.y) === form(keepOut, -y));
}

/** Every row on the left has one on the right on the same marks of the pole. */
function isPaired({ rows }: Layup): boolean {
  const right = rows.filter(({ side }) => side === 'R');
  const left = rows.filter(({ side }) => side === 'L');
  return (
    left.length === right.length &&
    left.every((row) => right.some(({ number, parity }) => number === row.number && parity === row.parity))
  );
}

/**
 * A row through the piece on the centreline meets the dots of both its joints. They lie in the same places of it only
 * where these run parallel; otherwise the mirror image of a dot on the near joint is not where that dot lies.
 */
function isStraightInTheMiddle({ rows, joints }: Layup): boolean {
  const open = rows.flatMap(({ side, face, through }) => (side === 'C' && through ? [face.joint, through.joint] : []));
  return joints.every(({ id, slope }) => slope === 0 || !open.includes(id));
}
