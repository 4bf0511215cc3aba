/** A side of a triangle that no other triangle shares, and one that more than two do. */
export const ALONE = -1;
export const MANY = -2;

/**
 * For each side of each triangle the side of the other triangle that shares it; `ALONE` or `MANY` where there is not
 * just one. Side `h` runs from corner `h` of `triangles` to the next corner of the same triangle. Triangles that are
 * turned the other way are found too.
 */
export function matesOf(triangles: Uint32Array, points: number): Int32Array {
  const starts = new Uint32Array(points + 1);
  for (let h = 0; h < triangles.length; h++) starts[triangles[h]! + 1]!++;
  for (let i = 0; i < points; i++) starts[i + 1]! += starts[i]!;
  const fill = starts.slice(0, points);
  const leaving = new Uint32Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) leaving[fill[triangles[h]!]!++] = h;
  const mates = new Int32Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) {
    const a = triangles[h]!;
    const b = triangles[nextSide(h)]!;
    let mate = ALONE;
    for (let i = starts[b]!; i < starts[b + 1]!; i++) {
      const other = leaving[i]!;
      if (triangles[nextSide(other)] === a) mate = mate === ALONE ? other : MANY;
    }
    for (let i = starts[a]!; i < starts[a + 1]!; i++) {
      const other = leaving[i]!;
      if (other !== h && triangles[nextSide(other)] === b) mate = mate === ALONE ? other : MANY;
    }
    mates[h] = mate;
  }
  return mates;
}

/** The next side of the same triangle. */
export const nextSide = (h: number): number => (h % 3 === 2 ? h - 2 : h + 1);
