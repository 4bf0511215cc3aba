import type { Board } from '../board/board.js';
import type { Point } from '../contour/point.js';
import type { InBlank } from '../stock/inBlank.js';
import { sliceMesh } from './slice.js';
import { stockLineAt } from './stockLine.js';

/** Blank and finished board cut along the inner edge of the strip next to the centre: `[x, z]`, board frame, mm. */
export interface FitFromSide {
  readonly stock: readonly (readonly Point[])[];
  readonly finished: readonly (readonly Point[])[];
}

export function fitFromSide({ mesh, length }: Pick<Board, 'mesh' | 'length'>, blank: InBlank): FitFromSide {
  const strip = blank.strips.findIndex(({ member }) => member.side !== 'L');
  const joint = blank.strips[strip]!.member.left ?? { at: 0, slope: 0 };
  const slant = Math.hypot(1, joint.slope);
  const plane = { a: -joint.slope / slant, b: 1 / slant, d: joint.at / slant };
  return {
    stock: stockLineAt(blank, strip, joint, length).loops,
    finished: sliceMesh(mesh, plane, [1 / slant, joint.slope / slant]).map(({ points }) =>
      points.map(([x, , z]): Point => [x, z]),
    ),
  };
}
