import type { Triangles } from '../triangles.js';

/** The nearest point of a mesh, and the direction that its triangle looks in; overwritten by the next question. */
export interface Nearest {
  readonly point: Float64Array;
  readonly normal: Float64Array;
}

/** Side of the cells in plan by which triangles are found, mm. */
const CELL = 30;

/** Answers which point of a mesh lies nearest to a place, for places no further from it than `far`, mm. */
export function nearestOn(
  { positions: p, triangles }: Triangles,
  far: number,
): (x: number, y: number, z: number) => Nearest | undefined {
  let [lowX, lowY, highX, highY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < p.length; i += 3) {
    lowX = Math.min(lowX, p[i]!);
    highX = Math.max(highX, p[i]!);
    lowY = Math.min(lowY, p[i + 1]!);
    highY = Math.max(highY, p[i + 1]!);
  }
  const columns = Math.floor((highX - lowX) / CELL) + 1;
  const rows = Math.floor((highY - lowY) / CELL) + 1;
  const cells = Array.from({ length: columns * rows }, (): number[] => []);
  const clamp = (value: number, count: number) => Math.max(0, Math.min(count - 1, Math.floor(value / CELL)));
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const xs = corners.map((at) => p[at]! - lowX);
    const ys = corners.map((at) => p[at + 1]! - lowY);
    for (let c = clamp(Math.min(...xs), columns); c <= clamp(Math.max(...xs), columns); c++)
      for (let r = clamp(Math.min(...ys), rows); r <= clamp(Math.max(...ys), rows); r++) cells[c * rows + r]!.push(t);
  }
  const found: Nearest = { point: new Float64Array(3), normal: new Float64Array(3) };
  const closest = new Float64Array(3);
  return (x, y, z) => {
    let best = far * far;
    let nearest = -1;
    const [c0, r0] = [clamp(x - lowX, columns), clamp(y - lowY, rows)];
    for (let ring = 0; ring <= Math.ceil(far / CELL); ring++) {
      if (ring > 1 && ((ring - 1) * CELL) ** 2 > best) break;
      for (let c = Math.max(0, c0 - ring); c <= Math.min(columns - 1, c0 + ring); c++)
        for (let r = Math.max(0, r0 - ring); r <= Math.min(rows - 1, r0 + ring); r++) {
          if (Math.max(Math.abs(c - c0), Math.abs(r - r0)) !== ring) continue;
          for (const t of cells[c * rows + r]!) {
            closestOn(p, 3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!, [x, y, z], closest);
            const square = (closest[0]! - x) ** 2 + (closest[1]! - y) ** 2 + (closest[2]! - z) ** 2;
            if (square >= best) continue;
            best = square;
            nearest = t;
            found.point.set(closest);
          }
        }
    }
    if (nearest < 0) return undefined;
    const [a, b, c] = [3 * triangles[nearest]!, 3 * triangles[nearest + 1]!, 3 * triangles[nearest + 2]!];
    const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
    const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
    const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const size = Math.hypot(...normal) || 1;
    for (let axis = 0; axis < 3; axis++) found.normal[axis] = normal[axis]! / size;
    return found;
  };
}

/**
 * Writes the point of a triangle nearest to a place.
 * Source: C. Ericson, "Real-Time Collision Detection" (2005), section 5.1.5.
 */
function closestOn(
  p: Float64Array,
  a: number,
  b: number,
  c: number,
  [x, y, z]: readonly [number, number, number],
  into: Float64Array,
): void {
  const [abx, aby, abz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
  const [acx, acy, acz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
  const along = (from: number) => {
    const [px, py, pz] = [x - p[from]!, y - p[from + 1]!, z - p[from + 2]!];
    return [abx * px + aby * py + abz * pz, acx * px + acy * py + acz * pz] as const;
  };
  const put = (v: number, w: number) => {
    into[0] = p[a]! + v * abx + w * acx;
    into[1] = p[a + 1]! + v * aby + w * acy;
    into[2] = p[a + 2]! + v * abz + w * acz;
  };
  const [d1, d2] = along(a);
  if (d1 <= 0 && d2 <= 0) return put(0, 0);
  const [d3, d4] = along(b);
  if (d3 >= 0 && d4 <= d3) return put(1, 0);
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) return put(d1 / (d1 - d3 || 1), 0);
  const [d5, d6] = along(c);
  if (d6 >= 0 && d5 <= d6) return put(0, 1);
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) return put(0, d2 / (d2 - d6 || 1));
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    const w = (d4 - d3) / (d4 - d3 + (d5 - d6) || 1);
    return put(1 - w, w);
  }
  const whole = va + vb + vc || 1;
  put(vb / whole, vc / whole);
}
