import { ALONE, matesOf, nextSide } from './mates.js';

/**
 * The rims of the holes of triangles that are turned one way: the points around each, in the order in which triangles
 * that close it must run.
 */
export function rimsOf(triangles: Uint32Array, points: number): number[][] {
  const mates = matesOf(triangles, points);
  /** Sides that are alone, by the point they lead to; against the way of their triangles. */
  const back = new Map<number, number[]>();
  for (let h = 0; h < triangles.length; h++) {
    if (mates[h] !== ALONE) continue;
    const to = triangles[nextSide(h)]!;
    const there = back.get(to);
    if (there) there.push(triangles[h]!);
    else back.set(to, [triangles[h]!]);
  }
  const rims: number[][] = [];
  for (const first of back.keys()) {
    while ((back.get(first)?.length ?? 0) > 0) {
      const rim = [first];
      const places = new Map([[first, 0]]);
      for (let at = back.get(first)!.pop(); at !== undefined && at !== first; at = back.get(at)?.pop()) {
        const seen = places.get(at);
        if (seen !== undefined) {
          // It touches itself: what lies between is a rim of its own.
          const loop = rim.splice(seen);
          for (const point of loop) places.delete(point);
          if (loop.length >= 3) rims.push(loop);
        }
        places.set(at, rim.length);
        rim.push(at);
      }
      if (rim.length >= 3) rims.push(rim);
    }
  }
  return rims;
}
