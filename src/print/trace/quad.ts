import type { Box } from './box.js';

/** Four corners of a text's box, x0, y0, … counter-clockwise, mm; it may be turned. */
export type Quad = ArrayLike<number>;

/** The corners of an upright box. */
export const cornersOfBox = ({ minX, minY, maxX, maxY }: Box): Quad => [minX, minY, maxX, minY, maxX, maxY, minX, maxY];

/** Whether two turned boxes share any area: they do unless a side of one has the other wholly beyond it. */
export function quadsMeet(a: Quad, b: Quad): boolean {
  return !isParted(a, b) && !isParted(b, a);
}

function isParted(a: Quad, b: Quad): boolean {
  for (let i = 0; i < 8; i += 2) {
    const [x, y] = [a[i]!, a[i + 1]!];
    const [dx, dy] = [a[(i + 2) % 8]! - x, a[(i + 3) % 8]! - y];
    let beyond = true;
    for (let k = 0; k < 8; k += 2) beyond &&= (b[k]! - x) * dy - (b[k + 1]! - y) * dx >= 0;
    if (beyond) return true;
  }
  return false;
}

/** Whether a straight line runs through or into a turned box. */
export function quadIsCrossed(quad: Quad, ax: number, ay: number, bx: number, by: number): boolean {
  // What is left of the line behind each side of the box in turn (Cyrus and Beck 1978, IEEE Trans. Computers 27, 429).
  let [from, to] = [0, 1];
  for (let i = 0; i < 8; i += 2) {
    const [x, y] = [quad[i]!, quad[i + 1]!];
    const [dx, dy] = [quad[(i + 2) % 8]! - x, quad[(i + 3) % 8]! - y];
    const inA = dx * (ay - y) - dy * (ax - x);
    const inB = dx * (by - y) - dy * (bx - x);
    if (inA < 0 && inB < 0) return false;
    if (inA < 0) from = Math.max(from, inA / (inA - inB));
    if (inB < 0) to = Math.min(to, inA / (inA - inB));
  }
  return from <= to;
}
