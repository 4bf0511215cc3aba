import type { Chamber } from '../chamber/chamber.js';
import { stretchOf } from '../chamber/stretch.js';
import type { Row } from '../layup/layup.js';
import { farFace } from '../rout/setUp.js';

/**
 * How far a block of one thickness stands out of the far face of its piece once it is glued in, mm: at its nose end and
 * at its tail end.
 */
export interface Proud {
  readonly nose: number;
  readonly tail: number;
}

/** Less than this is sanded off with the face, mm. */
const FLUSH = 0.05;

/**
 * A chamber that goes right through a flared piece is as deep as its deeper end, and so is its block: the rest of it
 * stands proud, evenly from end to end, and is planed off flush. Undefined where nothing does. Straight faces, so this
 * is exact.
 */
export function proudOf(
  { profile, depth }: Pick<Chamber, 'profile' | 'depth'>,
  row: Row | undefined,
): Proud | undefined {
  const far = row && farFace(row);
  if (!far) return undefined;
  const { from, to } = stretchOf(profile);
  const at = (s: number) => Math.max(0, depth[1] - far.at - far.slope * s);
  const [nose, tail] = [at(from), at(to)];
  return Math.max(nose, tail) > FLUSH ? { nose, tail } : undefined;
}
