/**
 * Closest points of simple figures, 3-D. Everything is written into `found` and nothing is allocated: these are the
 * innermost loops of the proof. Source of the methods: C. Ericson, "Real-Time Collision Detection" (2005), ch. 5.1.
 *
 * Layout of `Found`: 0 the squared distance, 1–3 the point on the flat, 4–6 the point on the triangle.
 */
export type Found = Float64Array;

export function noFound(): Found {
  return Float64Array.of(Infinity, 0, 0, 0, 0, 0, 0);
}

/**
 * Rectangles in space, one behind the other, `FLAT` numbers each. Layout of one: 0–2 one corner, 3–5 the first side,
 * 6–8 the second side (square to the first), 9–11 the unit normal, 12–14 the corner at the end of the first side, 15–17
 * of the second, 18–20 of both.
 */
export type Flats = Float64Array;

export const FLAT = 21;
/** Where sides, normal and further corners stand in a flat; an edge is a corner and the side that leads on from it. */
export const FIRST = 3;
export const SECOND = 6;
export const NORMAL = 9;
const AFTER_FIRST = 12;
export const AFTER_SECOND = 15;
const OPPOSITE = 18;
export const CORNERS = [0, AFTER_FIRST, AFTER_SECOND, OPPOSITE] as const;

/** Writes corner and sides of the flat that begins at `at`. */
export function setSides(
  flats: Flats,
  at: number,
  x: number,
  y: number,
  z: number,
  ex: number,
  ey: number,
  ez: number,
  dx: number,
  dy: number,
  dz: number,
): void {
  set(flats, at, x, y, z);
  set(flats, at + FIRST, ex, ey, ez);
  set(flats, at + SECOND, dx, dy, dz);
  set(flats, at + AFTER_FIRST, x + ex, y + ey, z + ez);
  set(flats, at + AFTER_SECOND, x + dx, y + dy, z + dz);
  set(flats, at + OPPOSITE, x + ex + dx, y + ey + dy, z + ez + dz);
}

/** Writes its unit normal. */
export function setNormal(flats: Flats, at: number, x: number, y: number, z: number): void {
  set(flats, at + NORMAL, x, y, z);
}

function set(numbers: Float64Array, at: number, x: number, y: number, z: number): void {
  numbers[at] = x;
  numbers[at + 1] = y;
  numbers[at + 2] = z;
}

/**
 * Betters `found` by the corners of the flat that begins at `at` and of the triangle whose nine corner numbers stand in
 * `c`, each against the other figure.
 */
export function cornersToTriangle(flats: Flats, at: number, c: Float64Array, found: Found): void {
  for (let i = 0; i < 9; i += 3) pointToFlat(flats, at, c, i, found);
  for (let i = 0; i < 4; i++) pointToTriangle(flats, at + CORNERS[i]!, c, found);
}

/**
 * Betters `found` by the edges of both, against each other. With the corners, this is all there is where the two do not
 * meet.
 */
export function edgesToTriangle(flats: Flats, at: number, c: Float64Array, found: Found): void {
  for (let a = 0; a < 9; a += 3) {
    const b = a === 6 ? 0 : a + 3;
    edgeToEdge(flats, at, at + FIRST, c, a, b, found);
    edgeToEdge(flats, at + AFTER_SECOND, at + FIRST, c, a, b, found);
    edgeToEdge(flats, at, at + SECOND, c, a, b, found);
    edgeToEdge(flats, at + AFTER_FIRST, at + SECOND, c, a, b, found);
  }
}

/** Sets `found` to 0 where an edge of one goes through the other. */
export function crossTriangle(flats: Flats, at: number, c: Float64Array, found: Found): void {
  for (let a = 0; a < 9; a += 3) edgeThroughFlat(flats, at, c, a, a === 6 ? 0 : a + 3, found);
  edgeThroughTriangle(flats, at, at + FIRST, c, found);
  edgeThroughTriangle(flats, at + AFTER_SECOND, at + FIRST, c, found);
  edgeThroughTriangle(flats, at, at + SECOND, c, found);
  edgeThroughTriangle(flats, at + AFTER_FIRST, at + SECOND, c, found);
}

/**
 * Squares that differ by less, mm², are the same: of two places as near, as on both sides of a symmetric board, the
 * first is kept on every machine, though the last bits of sines and roots differ.
 */
const TIE = 1e-9;

/** Betters `found` by a point on the flat and one on the triangle. Nearer than ties, they meet. */
function better(found: Found, px: number, py: number, pz: number, qx: number, qy: number, qz: number): void {
  const x = px - qx,
    y = py - qy,
    z = pz - qz;
  const square = x * x + y * y + z * z;
  if (square >= found[0]! - TIE) return;
  found[0] = square < TIE ? 0 : square;
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

/** Betters `found` by the point that stands at `i` in `c` against the flat that begins at `at`. */
export function pointToFlat(flats: Flats, at: number, c: Float64Array, i: number, found: Found): void {
  const x = flats[at]!,
    y = flats[at + 1]!,
    z = flats[at + 2]!;
  const ex = flats[at + FIRST]!,
    ey = flats[at + FIRST + 1]!,
    ez = flats[at + FIRST + 2]!;
  const dx = flats[at + SECOND]!,
    dy = flats[at + SECOND + 1]!,
    dz = flats[at + SECOND + 2]!;
  const qx = c[i]!,
    qy = c[i + 1]!,
    qz = c[i + 2]!;
  const rx = qx - x,
    ry = qy - y,
    rz = qz - z;
  const u = clamp01((rx * ex + ry * ey + rz * ez) / (ex * ex + ey * ey + ez * ez || 1));
  const v = clamp01((rx * dx + ry * dy + rz * dz) / (dx * dx + dy * dy + dz * dz || 1));
  better(found, x + u * ex + v * dx, y + u * ey + v * dy, z + u * ez + v * dz, qx, qy, qz);
}

/**
 * The point that stands at `i` in `p` against the triangle; Ericson 5.1.5: by the region of the triangle's plane in
 * which the point lies.
 */
export function pointToTriangle(p: Float64Array, i: number, c: Float64Array, found: Found): void {
  const px = p[i]!,
    py = p[i + 1]!,
    pz = p[i + 2]!;
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

/**
 * The edge from the corner that stands at `corner` along the side at `side` against the one between corners `a` and `b`
 * of the triangle; Ericson 5.1.9.
 */
function edgeToEdge(
  flats: Flats,
  corner: number,
  side: number,
  triangle: Float64Array,
  from: number,
  to: number,
  found: Found,
): void {
  const px = flats[corner]!,
    py = flats[corner + 1]!,
    pz = flats[corner + 2]!;
  const ux = flats[side]!,
    uy = flats[side + 1]!,
    uz = flats[side + 2]!;
  const qx = triangle[from]!,
    qy = triangle[from + 1]!,
    qz = triangle[from + 2]!;
  const vx = triangle[to]! - qx,
    vy = triangle[to + 1]! - qy,
    vz = triangle[to + 2]! - qz;
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

/** Where an edge goes through a plane. */
const crossing = new Float64Array(3);

/**
 * Whether the edge from p along v, which begins at a height over a plane and falls by so much, goes through it;
 * `crossing` is where.
 */
function crosses(
  height: number,
  fall: number,
  px: number,
  py: number,
  pz: number,
  vx: number,
  vy: number,
  vz: number,
): boolean {
  if (height * (height + fall) > 0 || fall === 0) return false;
  // Two heights whose product is too small to be told from 0 may lie on one side.
  const t = clamp01(-height / fall);
  set(crossing, 0, px + t * vx, py + t * vy, pz + t * vz);
  return true;
}

function edgeThroughFlat(flats: Flats, at: number, c: Float64Array, a: number, b: number, found: Found): void {
  const nx = flats[at + NORMAL]!,
    ny = flats[at + NORMAL + 1]!,
    nz = flats[at + NORMAL + 2]!;
  const vx = c[b]! - c[a]!,
    vy = c[b + 1]! - c[a + 1]!,
    vz = c[b + 2]! - c[a + 2]!;
  const height = nx * (c[a]! - flats[at]!) + ny * (c[a + 1]! - flats[at + 1]!) + nz * (c[a + 2]! - flats[at + 2]!);
  const fall = nx * vx + ny * vy + nz * vz;
  if (crosses(height, fall, c[a]!, c[a + 1]!, c[a + 2]!, vx, vy, vz)) pointToFlat(flats, at, crossing, 0, found);
}

function edgeThroughTriangle(flats: Flats, corner: number, side: number, c: Float64Array, found: Found): void {
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
  const px = flats[corner]!,
    py = flats[corner + 1]!,
    pz = flats[corner + 2]!;
  const ux = flats[side]!,
    uy = flats[side + 1]!,
    uz = flats[side + 2]!;
  const height = nx * (px - ax) + ny * (py - ay) + nz * (pz - az);
  const fall = nx * ux + ny * uy + nz * uz;
  if (crosses(height, fall, px, py, pz, ux, uy, uz)) pointToTriangle(crossing, 0, c, found);
}
