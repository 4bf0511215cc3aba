import type { Board } from '../board/board.js';
import type { Layup } from '../layup/layup.js';
import { AlongBoard, type Moments } from './moments.js';
import { blankOf, type Blank } from './blank.js';
import { skinOf, type Skin } from './skin.js';
import { slicesOf } from './slices.js';

/** What of a board's weight has nothing to do with its chambers. */
export interface Bare {
  readonly length: number;
  /** Litres of the finished board and those displaced by it. */
  readonly volume: number;
  /** What each member has of the finished, solid board, litres, left to right. */
  readonly members: readonly Moments[];
  readonly blank: Blank;
  /** Glued faces, m². */
  readonly bondedJoints: Moments;
  readonly dottedJoints: Moments;
  readonly skin: Skin;
}

export function bareOf(board: Board, layup: Layup): Bare {
  const slices = slicesOf(board, layup);
  const { xs } = slices;
  const members = layup.members.map((_, m) => {
    const along = new AlongBoard();
    for (let i = 1; i < xs.length; i++) {
      const a = (i - 1) * slices.members + m;
      const b = a + slices.members;
      along.add(
        xs[i - 1]!,
        xs[i]!,
        slices.area[a]!,
        slices.area[b]!,
        slices.secondMomentAcross[a]! / (slices.area[a]! || 1),
        slices.secondMomentAcross[b]! / (slices.area[b]! || 1),
      );
    }
    return along.moments(1e6);
  });
  const joints = (kind: 'bonded' | 'dotted'): Moments => {
    const along = new AlongBoard();
    layup.joints.forEach((joint, j) => {
      if (joint.kind !== kind) return;
      const slant = Math.hypot(1, joint.slope);
      const y = (x: number) => (joint.at + joint.slope * x) ** 2;
      for (let i = 1; i < xs.length; i++) {
        const a = (i - 1) * slices.joints + j;
        along.add(
          xs[i - 1]!,
          xs[i]!,
          slant * slices.jointHeight[a]!,
          slant * slices.jointHeight[a + slices.joints]!,
          y(xs[i - 1]!),
          y(xs[i]!),
        );
      }
    });
    return along.moments(1e6);
  };
  return {
    length: board.length,
    volume: board.volume,
    members,
    blank: blankOf(board, layup, slices),
    bondedJoints: joints('bonded'),
    dottedJoints: joints('dotted'),
    skin: skinOf(board.grid, slices),
  };
}

/** The same board, its members sawn and milled from what the job lists as stock. */
export function fromStock(bare: Bare, members: NonNullable<Blank['fromStock']>): Bare {
  return { ...bare, blank: { ...bare.blank, fromStock: members } };
}
