import type { Triangles } from '../triangles.js';

/**
 * The same triangles with each point once, in the order they are first used; points that no triangle uses are gone, and
 * so are triangles of which two corners are one point.
 */
export function welded({ positions, triangles }: Triangles): Triangles {
  let size = 1;
  while (size < 2 * Math.min(positions.length / 3, triangles.length)) size *= 2;
  const slots = new Int32Array(size).fill(-1);
  const kept = new Float64Array(3 * Math.min(positions.length / 3, triangles.length));
  const number = new Int32Array(positions.length / 3).fill(-1);
  const bits = new Float32Array(3);
  const asWhole = new Int32Array(bits.buffer);
  let count = 0;
  const numberOf = (point: number): number => {
    const known = number[point]!;
    if (known >= 0) return known;
    // Adding 0 makes of -0 a 0.
    const x = positions[3 * point]! + 0;
    const y = positions[3 * point + 1]! + 0;
    const z = positions[3 * point + 2]! + 0;
    bits[0] = x;
    bits[1] = y;
    bits[2] = z;
    let hash =
      Math.imul(asWhole[0]!, 0x9e3779b1) ^ Math.imul(asWhole[1]!, 0x85ebca6b) ^ Math.imul(asWhole[2]!, 0xc2b2ae35);
    hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
    hash ^= hash >>> 13;
    for (let slot = hash & (size - 1); ; slot = (slot + 1) & (size - 1)) {
      const there = slots[slot]!;
      if (there < 0) {
        slots[slot] = count;
        kept[3 * count] = x;
        kept[3 * count + 1] = y;
        kept[3 * count + 2] = z;
        return (number[point] = count++);
      }
      if (kept[3 * there] === x && kept[3 * there + 1] === y && kept[3 * there + 2] === z)
        return (number[point] = there);
    }
  };
  const renumbered = new Uint32Array(triangles.length);
  for (let i = 0; i < triangles.length; i++) renumbered[i] = numberOf(triangles[i]!);
  return { positions: kept.slice(0, 3 * count), triangles: withArea(renumbered) };
}

/** Without the triangles of which two corners are one. */
export function withArea(triangles: Uint32Array): Uint32Array {
  let length = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i]!;
    const b = triangles[i + 1]!;
    const c = triangles[i + 2]!;
    if (a === b || b === c || c === a) continue;
    triangles[length++] = a;
    triangles[length++] = b;
    triangles[length++] = c;
  }
  return triangles.subarray(0, length);
}

/**
 * Joins those of the given points that lie within `tolerance` of each other: the edges of surfaces that were written
 * one by one meet, but for rounding.
 */
export function joined<T extends Triangles>(mesh: T, points: Iterable<number>, tolerance: number): T | Triangles {
  const { positions, triangles } = mesh;
  const cells = new Map<string, number[]>();
  const stands = new Map<number, number>();
  const cell = (value: number) => Math.floor(value / tolerance);
  for (const point of points) {
    const [x, y, z] = [positions[3 * point]!, positions[3 * point + 1]!, positions[3 * point + 2]!];
    let found: number | undefined;
    for (let i = 0; i < 27 && found === undefined; i++) {
      const key = `${cell(x) + (i % 3) - 1},${cell(y) + (Math.floor(i / 3) % 3) - 1},${cell(z) + Math.floor(i / 9) - 1}`;
      found = cells
        .get(key)
        ?.find(
          (other) =>
            Math.hypot(positions[3 * other]! - x, positions[3 * other + 1]! - y, positions[3 * other + 2]! - z) <=
            tolerance,
        );
    }
    if (found !== undefined) stands.set(point, found);
    else {
      const key = `${cell(x)},${cell(y)},${cell(z)}`;
      const there = cells.get(key);
      if (there) there.push(point);
      else cells.set(key, [point]);
    }
  }
  if (stands.size === 0) return mesh;
  return { positions, triangles: withArea(triangles.map((point) => stands.get(point) ?? point)) };
}
