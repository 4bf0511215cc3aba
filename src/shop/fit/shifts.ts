import type { PathD } from 'clipper2-ts';
import { inHalfPlane } from '../../contour/halfPlane.js';
import { rectangleAround } from '../../contour/rectangle.js';
import { straight } from '../../contour/straight.js';

/**
 * The shifts at which `inner` keeps within every straight line along an edge of `room`, as a convex polygon; empty
 * where there are none. Where `room` bulges outward everywhere these are the shifts at which `inner` lies inside it;
 * elsewhere no others need to be tried. Each line leaves a half-plane of shifts (Lozano-Pérez, as in `containment.ts`),
 * cut from a square one after the other.
 *
 * @param slack how far `inner` may stand over a line, mm
 */
export function shiftsWithin(inner: PathD, room: readonly PathD[], slack: number): PathD {
  const corners = room.flat();
  const far = 2 * Math.max(...[...inner, ...corners].map(({ x, y }) => Math.hypot(x, y))) + 1;
  let shifts = rectangleAround([0, 0], 2 * far, 2 * far);
  for (const edge of room) {
    for (const [i, from] of edge.entries()) {
      const to = edge[(i + 1) % edge.length]!;
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      if (length === 0) continue;
      const [nx, ny] = [(to.y - from.y) / length, (from.x - to.x) / length];
      const reach = (path: PathD) => Math.max(...path.map(({ x, y }) => nx * x + ny * y));
      shifts = inHalfPlane(shifts, [nx, ny], reach(corners) - reach(inner) + slack);
    }
  }
  return straight(shifts);
}
