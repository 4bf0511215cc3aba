import type { Board } from '../board/board.js';
import type { Chambers } from '../chamber/chambers.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { thinWalls, type ThinWall } from './thinWalls.js';
import type { Fault } from './fault.js';
import { faultsOf } from './faults.js';
import type { Published } from './published.js';

/** What proving a finished plan has found against it. */
export interface Proof {
  /** Walls thinner than asked. */
  readonly thin: readonly ThinWall[];
  /** Every other rule that is broken. */
  readonly faults: readonly Fault[];
}

/** Proves a finished plan once more, from its published results alone: the walls, and everything that is not a wall. */
export function proofOf(plan: Published & Pick<Chambers, 'asked'> & { trees: PatchTrees; board: Board }): Proof {
  const { chambers, layup, trees, board, asked } = plan;
  return { thin: thinWalls(chambers, layup.rows, trees, board.mesh.chordError, asked), faults: faultsOf(plan) };
}
