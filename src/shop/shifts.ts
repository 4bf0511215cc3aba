import type { PathD } from 'clipper2-ts';

/**
 * The shifts at which `inner` keeps within every straight line along an edge of `room`, as a convex polygon; empty
 * where there are none. Where `room` bulges outward everywhere these are the shifts at which `inner` lies inside it;
 * elsewhere no others need to be tried. Each line leaves a half-plane of shifts (Lozano-Pérez, as in `containment.ts`),
 * cut from a square one after the other (Sutherland and Hodgman, "Reentrant polygon clipping", Communications of the
 * ACM 17(1), 1974).
 *
 * @param slack how far `inner` may stand over a line, mm
 */
export function shiftsWithin(inner: PathD, room: readonly PathD[], slack: number): PathD {
  const corners = room.flat();
  const far = 2 * Math.max(...[...inner, ...corners].map(({ x, y }) => Math.hypot(x, y))) + 1;
  let shifts: PathD = [
    { x: -far, y: -far },
    { x: far, y: -far },
    { x: far, y: far },
    { x: -far, y: far },
  ];
  for (const edge of room) {
    for (const [i, from] of edge.entries()) {
      const to = edge[(i + 1) % edge.length]!;
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      if (length === 0) continue;
      const [nx, ny] = [(to.y - from.y) / length, (from.x - to.x) / length];
      const reach = (path: PathD) => Math.max(...path.map(({ x, y }) => nx * x + ny * y));
      shifts = cut(shifts, nx, ny, reach(corners) - reach(inner) + slack);
    }
  }
  return shifts;
}

/** What of a convex polygon has `nx x + ny y` no larger than `most`. */
function cut(polygon: PathD, nx: number, ny: number, most: number): PathD {
  const over = polygon.map(({ x, y }) => nx * x + ny * y - most);
  return polygon.flatMap((point, i) => {
    const next = (i + 1) % polygon.length;
    const [a, b] = [over[i]!, over[next]!];
    const kept = a <= 0 ? [point] : [];
    if (a > 0 === b > 0) return kept;
    const share = a / (a - b);
    const to = polygon[next]!;
    return [...kept, { x: point.x + share * (to.x - point.x), y: point.y + share * (to.y - point.y) }];
  });
}
