/**
 * Closest points of simple figures, 3-D. Everything is written into `found` and nothing is allocated: these are the innermost loops
 * of the proof. Source of the methods: C. Ericson, "Real-Time Collision Detection" (2005), ch. 5.1.
 *
 * Layout of `Found`: 0 the squared distance, 1–3 the point on the flat, 4–6 the point on the triangle.
 */
export type Found = Float64Array;

export function noFound(): Found {
  return Float64Array.of(Infinity, 0, 0, 0, 0, 0, 0);
}

/**
 * A rectangle in space. Layout: 0–2 one corner, 3–5 the first side, 6–8 the second side (square to the first), 9–11 the unit normal.
 */
export type Flat = Float64Array;

/** Betters `found` by the corners of a rectangle and of the triangle whose nine corner numbers stand in `c`, each against the other figure. */
export function cornersToTriangle(flat: Flat, c: Float64Array, found: Found): void {
  const ox = flat[0]!;
  const oy = flat[1]!;
  const oz = flat[2]!;
  for (let i = 0; i < 9; i += 3) cornerToFlat(flat, c[i]!, c[i + 1]!, c[i + 2]!, found);
  cornerToTriangle(ox, oy, oz, c, found);
  cornerToTriangle(ox + flat[3]!, oy + flat[4]!, oz + flat[5]!, c, found);
  cornerToTriangle(ox + flat[6]!, oy + flat[7]!, oz + flat[8]!, c, found);
  cornerToTriangle(ox + flat[3]! + flat[6]!, oy + flat[4]! + flat[7]!, oz + flat[5]! + flat[8]!, c, found);
}

/** Betters `found` by the edges of both, against each other. With the corners, this is all there is where the two do not meet. */
export function edgesToTriangle(flat: Flat, c: Float64Array, found: Found): void {
  const ox = flat[0]!;
  const oy = flat[1]!;
  const oz = flat[2]!;
  const ex = flat[3]!;
  const ey = flat[4]!;
  const ez = flat[5]!;
  const dx = flat[6]!;
  const dy = flat[7]!;
  const dz = flat[8]!;
  for (let a = 0; a < 9; a += 3) {
    const b = (a + 3) % 9;
    const ax = c[a]!;
    const ay = c[a + 1]!;
    const az = c[a + 2]!;
    const vx = c[b]! - ax;
    const vy = c[b + 1]! - ay;
    const vz = c[b + 2]! - az;
    edgeToEdge(ox, oy, oz, ex, ey, ez, ax, ay, az, vx, vy, vz, found);
    edgeToEdge(ox + dx, oy + dy, oz + dz, ex, ey, ez, ax, ay, az, vx, vy, vz, found);
    edgeToEdge(ox, oy, oz, dx, dy, dz, ax, ay, az, vx, vy, vz, found);
    edgeToEdge(ox + ex, oy + ey, oz + ez, dx, dy, dz, ax, ay, az, vx, vy, vz, found);
  }
}

/** Sets `found` to 0 where an edge of one goes through the other. */
export function crossTriangle(flat: Flat, c: Float64Array, found: Found): void {
  const ox = flat[0]!;
  const oy = flat[1]!;
  const oz = flat[2]!;
  const ex = flat[3]!;
  const ey = flat[4]!;
  const ez = flat[5]!;
  const dx = flat[6]!;
  const dy = flat[7]!;
  const dz = flat[8]!;
  for (let a = 0; a < 9; a += 3) {
    const b = (a + 3) % 9;
    edgeThroughFlat(
      flat,
      c[a]!,
      c[a + 1]!,
      c[a + 2]!,
      c[b]! - c[a]!,
      c[b + 1]! - c[a + 1]!,
      c[b + 2]! - c[a + 2]!,
      found,
    );
  }
  edgeThroughTriangle(ox, oy, oz, ex, ey, ez, c, found);
  edgeThroughTriangle(ox + dx, oy + dy, oz + dz, ex, ey, ez, c, found);
  edgeThroughTriangle(ox, oy, oz, dx, dy, dz, c, found);
  edgeThroughTriangle(ox + ex, oy + ey, oz + ez, dx, dy, dz, c, found);
}

/**
 * Squares that differ by less, mm², are the same: of two places as near, as on both sides of a symmetric board, the first is kept on every machine,
 * though the last bits of sines and roots differ.
 */
const TIE = 1e-9;

function better(found: Found, px: number, py: number, pz: number, qx: number, qy: number, qz: number): void {
  const x = px - qx,
    y = py - qy,
    z = pz - qz;
  const square = x * x + y * y + z * z;
  if (square >= found[0]! - TIE) return;
  found[0] = square;
  found[1] = px;
  found[2] = py;
  found[3] = pz;
  found[4] = qx;
  found[5] = qy;
  found[6] = qz;
}

function clamp01(value: number): number {
  return value < 0 ? 0 : value > 1 ? 1 : value;
}

function cornerToFlat(flat: Flat, qx: number, qy: number, qz: number, found: Found): void {
  const ex = flat[3]!,
    ey = flat[4]!,
    ez = flat[5]!;
  const dx = flat[6]!,
    dy = flat[7]!,
    dz = flat[8]!;
  const rx = qx - flat[0]!,
    ry = qy - flat[1]!,
    rz = qz - flat[2]!;
  const u = clamp01((rx * ex + ry * ey + rz * ez) / (ex * ex + ey * ey + ez * ez || 1));
  const v = clamp01((rx * dx + ry * dy + rz * dz) / (dx * dx + dy * dy + dz * dz || 1));
  better(found, flat[0]! + u * ex + v * dx, flat[1]! + u * ey + v * dy, flat[2]! + u * ez + v * dz, qx, qy, qz);
}

/** Ericson 5.1.5: by the region of the triangle's plane in which the point lies. */
function cornerToTriangle(px: number, py: number, pz: number, c: Float64Array, found: Found): void {
  const ax = c[0]!,
    ay = c[1]!,
    az = c[2]!;
  const ux = c[3]! - ax,
    uy = c[4]! - ay,
    uz = c[5]! - az;
  const vx = c[6]! - ax,
    vy = c[7]! - ay,
    vz = c[8]! - az;
  const wx = px - ax,
    wy = py - ay,
    wz = pz - az;
  const d1 = ux * wx + uy * wy + uz * wz;
  const d2 = vx * wx + vy * wy + vz * wz;
  const uu = ux * ux + uy * uy + uz * uz;
  const uv = ux * vx + uy * vy + uz * vz;
  const vv = vx * vx + vy * vy + vz * vz;
  const d3 = d1 - uu,
    d4 = d2 - uv,
    d5 = d1 - uv,
    d6 = d2 - vv;
  let s = 0;
  let t = 0;
  const vc = d1 * d4 - d3 * d2;
  const vb = d5 * d2 - d1 * d6;
  const va = d3 * d6 - d5 * d4;
  if (d1 <= 0 && d2 <= 0) {
    // nearest to the first corner
  } else if (d3 >= 0 && d4 <= d3) s = 1;
  else if (vc <= 0 && d1 >= 0 && d3 <= 0) s = d1 / (d1 - d3);
  else if (d6 >= 0 && d5 <= d6) t = 1;
  else if (vb <= 0 && d2 >= 0 && d6 <= 0) t = d2 / (d2 - d6);
  else if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    t = (d4 - d3) / (d4 - d3 + d5 - d6 || 1);
    s = 1 - t;
  } else {
    const sum = va + vb + vc || 1;
    s = vb / sum;
    t = vc / sum;
  }
  better(found, px, py, pz, ax + s * ux + t * vx, ay + s * uy + t * vy, az + s * uz + t * vz);
}

/** Ericson 5.1.9: two segments, each a point and a direction as long as the segment. */
function edgeToEdge(
  px: number,
  py: number,
  pz: number,
  ux: number,
  uy: number,
  uz: number,
  qx: number,
  qy: number,
  qz: number,
  vx: number,
  vy: number,
  vz: number,
  found: Found,
): void {
  const rx = px - qx,
    ry = py - qy,
    rz = pz - qz;
  const a = ux * ux + uy * uy + uz * uz;
  const e = vx * vx + vy * vy + vz * vz;
  const f = vx * rx + vy * ry + vz * rz;
  const c = ux * rx + uy * ry + uz * rz;
  const b = ux * vx + uy * vy + uz * vz;
  const denominator = a * e - b * b;
  let s = denominator > 1e-12 * a * e ? clamp01((b * f - c * e) / denominator) : 0;
  let t = e > 0 ? (b * s + f) / e : 0;
  if (t < 0) {
    t = 0;
    s = a > 0 ? clamp01(-c / a) : 0;
  } else if (t > 1) {
    t = 1;
    s = a > 0 ? clamp01((b - c) / a) : 0;
  }
  better(found, px + s * ux, py + s * uy, pz + s * uz, qx + t * vx, qy + t * vy, qz + t * vz);
}

function edgeThroughFlat(
  flat: Flat,
  ax: number,
  ay: number,
  az: number,
  vx: number,
  vy: number,
  vz: number,
  found: Found,
): void {
  const nx = flat[9]!,
    ny = flat[10]!,
    nz = flat[11]!;
  const rx = ax - flat[0]!,
    ry = ay - flat[1]!,
    rz = az - flat[2]!;
  const height = nx * rx + ny * ry + nz * rz;
  const fall = nx * vx + ny * vy + nz * vz;
  if (height * (height + fall) > 0 || fall === 0) return;
  const t = -height / fall;
  cornerToFlat(flat, ax + t * vx, ay + t * vy, az + t * vz, found);
}

function edgeThroughTriangle(
  px: number,
  py: number,
  pz: number,
  ux: number,
  uy: number,
  uz: number,
  c: Float64Array,
  found: Found,
): void {
  const ax = c[0]!,
    ay = c[1]!,
    az = c[2]!;
  const e1x = c[3]! - ax,
    e1y = c[4]! - ay,
    e1z = c[5]! - az;
  const e2x = c[6]! - ax,
    e2y = c[7]! - ay,
    e2z = c[8]! - az;
  const nx = e1y * e2z - e1z * e2y,
    ny = e1z * e2x - e1x * e2z,
    nz = e1x * e2y - e1y * e2x;
  const height = nx * (px - ax) + ny * (py - ay) + nz * (pz - az);
  const fall = nx * ux + ny * uy + nz * uz;
  if (height * (height + fall) > 0 || fall === 0) return;
  const t = -height / fall;
  cornerToTriangle(px + t * ux, py + t * uy, pz + t * uz, c, found);
}
