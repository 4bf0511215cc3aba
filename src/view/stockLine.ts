import type { Point } from '../contour/point.js';
import { spanAt } from '../contour/span.js';
import { unplaced } from '../stock/placement.js';
import { placementOf } from '../stock/placementOf.js';
import type { Line } from '../stock/sawn.js';
import type { InBlank } from '../stock/inBlank.js';
import { sliceMesh } from './slice.js';

/** The moulded blank cut along a line of the glue-up, as the board lies in it: closed lines, `[x, z]`, board frame. */
export interface StockLine {
  readonly loops: readonly (readonly Point[])[];
  /** Heights of the foam's bottom and deck at `x`; undefined where there is none. */
  heightsAt(x: number): { readonly bottom: number; readonly deck: number } | undefined;
}

/**
 * @param strip its place in the sawn strips: which of them stands at the line
 * @param line where the cut runs in the glue-up, board frame
 * @param length the board's, mm
 */
export function stockLineAt(blank: InBlank, strip: number, line: Line, length: number): StockLine {
  const { moved, member } = blank.strips[strip]!;
  const placement = placementOf(blank.fits, member.id);
  const slope = line.slope - moved.slope;
  const slant = Math.hypot(1, slope);
  // In the blank's own frame the cut lies nearer to the centre, and begins where its nose end is.
  const at = line.at - moved.at - slope * placement.along;
  const plane = { a: -slope / slant, b: 1 / slant, d: at / slant };
  const back = unplaced(placement, length);
  const loops = sliceMesh(blank.moulded.mesh, plane, [1 / slant, slope / slant]).map(({ points }) =>
    points.map(([x, , z]): Point => back(x, z)),
  );
  return {
    loops,
    heightsAt(x) {
      for (const loop of loops) {
        const span = spanAt(loop, x);
        if (span) return { bottom: span[0], deck: span[1] };
      }
      return undefined;
    },
  };
}
