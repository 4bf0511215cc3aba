import type { Triangles } from '../triangles.js';

/** Takes one cut of a triangle with the plane of that number: from `y0`, `z0` to `y1`, `z1`, mm. */
export type TakeCut = (plane: number, y0: number, z0: number, y1: number, z1: number) => void;

/** Side of the stretches by which the first plane past a place is found, mm. */
const STRETCH = 1;

/**
 * Cuts triangles by planes square to x.
 *
 * @param planes their x, rising
 * @param until where in `triangles` those end that are to be cut
 */
export function cutBy(
  { positions: p, triangles }: Triangles,
  planes: Float64Array,
  take: TakeCut,
  until = triangles.length,
): void {
  const count = planes.length;
  const low = planes[0]!;
  const first = firstPast(planes);
  for (let t = 0; t < until; t += 3) {
    const i = 3 * triangles[t]!;
    const j = 3 * triangles[t + 1]!;
    const k = 3 * triangles[t + 2]!;
    const a = p[i]!;
    const b = p[j]!;
    const c = p[k]!;
    const from = a < b ? (a < c ? a : c) : b < c ? b : c;
    const to = a > b ? (a > c ? a : c) : b > c ? b : c;
    let plane = from <= low ? 0 : first[Math.min(first.length - 1, ((from - low) / STRETCH) | 0)]!;
    while (plane < count && planes[plane]! <= from) plane++;
    for (; plane < count && planes[plane]! <= to; plane++) {
      const x = planes[plane]!;
      // A corner on the plane counts as past it, so that neighbours agree.
      const [isA, isB, isC] = [a >= x, b >= x, c >= x];
      const alone = isB === isC ? 0 : isA === isC ? 1 : 2;
      const one = alone === 0 ? i : alone === 1 ? j : k;
      const two = alone === 0 ? j : alone === 1 ? k : i;
      const three = alone === 0 ? k : alone === 1 ? i : j;
      const s = (x - p[one]!) / (p[two]! - p[one]!);
      const r = (x - p[one]!) / (p[three]! - p[one]!);
      take(
        plane,
        p[one + 1]! + s * (p[two + 1]! - p[one + 1]!),
        p[one + 2]! + s * (p[two + 2]! - p[one + 2]!),
        p[one + 1]! + r * (p[three + 1]! - p[one + 1]!),
        p[one + 2]! + r * (p[three + 2]! - p[one + 2]!),
      );
    }
  }
}

/** For each stretch from the first plane on, the first plane that does not lie before it. */
function firstPast(planes: Float64Array): Uint32Array {
  const low = planes[0]!;
  const stretches = Math.ceil((planes[planes.length - 1]! - low) / STRETCH) + 1;
  const first = new Uint32Array(stretches);
  for (let i = 0, plane = 0; i < stretches; i++) {
    while (plane < planes.length - 1 && planes[plane]! < low + i * STRETCH) plane++;
    first[i] = plane;
  }
  return first;
}
