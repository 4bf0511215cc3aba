import { squaredOut, type Corner, type Pair } from './plane.js';

/**
 * The height of a pocket, mm: upright, from its bottom edge to its top edge, where that is least. The edges are meant
 * as they are before their corners are eased to the cutter. A side that ends the pocket may stand aslant, as a turned
 * guide's does; the edges count from where both have begun to where one ends.
 *
 * @param contour counter-clockwise, face frame
 */
export function leastHeight(contour: readonly Corner[]): number {
  const corners = squaredOut(contour);
  const from = endOf(corners, -1);
  const to = endOf(corners, 1);
  const places = corners.map(([s]) => s).filter((s) => s > from && s < to);
  return Math.min(...[from, ...places, to].map((s) => heightAt(corners, s)));
}

/**
 * Where the side that ends a pocket toward the nose (−1) or the tail (1) reaches furthest in: sides steeper than 45°,
 * on from the outermost corner.
 */
function endOf(corners: readonly Pair[], toward: -1 | 1): number {
  const n = corners.length;
  const outermost = corners.reduce((far, [s], i) => (toward * (s - corners[far]![0]) > 0 ? i : far), 0);
  let inmost = corners[outermost]![0];
  for (const way of [1, n - 1])
    for (let i = outermost, k = 0; k < n; k++) {
      const [s0, z0] = corners[i]!;
      i = (i + way) % n;
      const [s1, z1] = corners[i]!;
      if (Math.abs(z1 - z0) <= Math.abs(s1 - s0)) break;
      if (toward * (s1 - inmost) < 0) inmost = s1;
    }
  return inmost;
}

/** Height of a polygon on an upright line, mm. */
function heightAt(corners: readonly Pair[], s: number): number {
  let low = Infinity;
  let high = -Infinity;
  corners.forEach(([s0, z0], i) => {
    const [s1, z1] = corners[(i + 1) % corners.length]!;
    if (s < Math.min(s0, s1) || s > Math.max(s0, s1)) return;
    const crossed = s0 === s1 ? [z0, z1] : [z0 + ((s - s0) / (s1 - s0)) * (z1 - z0)];
    low = Math.min(low, ...crossed);
    high = Math.max(high, ...crossed);
  });
  return high - low;
}
