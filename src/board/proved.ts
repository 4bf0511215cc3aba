import type { Scan } from '../scan/whole/scan.js';
import type { Grid } from './grid.js';
import { normalsOf, PATCH_COSINE, PATCHES, type Mesh, type Patch } from './mesh.js';

/**
 * The triangles of a scan as walls are proved against them. Of which patch each is follows from the smooth surface
 * there, because the triangles of a noisy scan look every way; within `BAND` of where one patch passes into another a
 * triangle is of both.
 *
 * @param grid the smooth surface
 * @param noise how far the triangles usually lie off it, mm
 */
export function provedOf({ mesh, form }: Scan, grid: Grid, noise: number): Mesh {
  const { positions, triangles } = mesh;
  const normals = normalsOf(positions, triangles);
  const count = triangles.length / 3;
  const patches = new Uint8Array(count);
  const alsoPatches = new Uint8Array(count).fill(NONE);
  const bandsAt = bandsOf(grid, BAND + NOISE_BAND * noise);
  const isQuiet = noise < QUIET;
  for (let t = 0; t < count; t++) {
    const a = 3 * triangles[3 * t]!;
    const b = 3 * triangles[3 * t + 1]!;
    const c = 3 * triangles[3 * t + 2]!;
    const x = (positions[a]! + positions[b]! + positions[c]!) / 3;
    const y = (positions[a + 1]! + positions[b + 1]! + positions[c + 1]!) / 3;
    const z = (positions[a + 2]! + positions[b + 2]! + positions[c + 2]!) / 3;
    const up = normals[3 * t + 2]!;
    const own = Math.abs(up) < PATCH_COSINE ? RAIL : up > 0 ? DECK : BOTTOM;
    const isEnd = Math.abs(normals[3 * t]!) > PATCH_COSINE && Math.min(x, form.length - x) < END;
    const smooth = isEnd ? RAIL : bandsAt(x, y, z);
    patches[t] = smooth % PATCHES.length;
    if (smooth >= PATCHES.length) alsoPatches[t] = RAIL;
    else if (isQuiet && own !== smooth) alsoPatches[t] = own;
  }
  return { positions, triangles, normals, patches, alsoPatches, chordError: grid.chordError };
}

const [DECK, BOTTOM, RAIL] = PATCHES.map((patch: Patch) => PATCHES.indexOf(patch)) as [number, number, number];
/** Of no further patch. */
const NONE = 255;
/** On both sides of where patches meet, mm, and so many times the noise. */
const BAND = 2;
const NOISE_BAND = 4;
/** Below this, mm, a triangle's own direction says of which patch it is too. */
const QUIET = 0.02;
/** What looks along the board this near to a tip, mm, is the end of it. */
const END = 25;

/** What a place around a half-section is compared by, one row after the other, left then right. */
interface Bands {
  /** Angles from the keel at which rail begins: where it may, where it certainly has; where it ends, the same. */
  readonly angles: Float64Array;
  readonly sizes: Float64Array;
}

/**
 * Tells of which patch the smooth surface is next to a place: a code of `PATCHES`, more by three where it may be rail
 * too.
 */
function bandsOf(grid: Grid, band: number): (x: number, y: number, z: number) => number {
  const { xs, rows } = grid;
  const { angles, sizes } = bandsByRow(grid, band);
  const first = rowsBefore(xs);
  return (x, y, z) => {
    let row = first[Math.max(0, Math.min(first.length - 1, Math.floor(x)))]!;
    while (row < rows - 2 && xs[row + 1]! <= x) row++;
    const share = Math.max(0, Math.min(1, (x - xs[row]!) / (xs[row + 1]! - xs[row]! || 1)));
    const side = y < 0 ? 0 : 1;
    const at = 3 * (row * 2 + side);
    const size = (k: number) => sizes[at + k]! + share * (sizes[at + 6 + k]! - sizes[at + k]!);
    const angle = Math.atan2(Math.abs(y) / size(0), -(z - size(2)) / size(1));
    const from = 4 * (row * 2 + side);
    const to = from + 8;
    if (angle < Math.min(angles[from]!, angles[to]!)) return BOTTOM;
    if (angle < Math.max(angles[from + 1]!, angles[to + 1]!)) return BOTTOM + PATCHES.length;
    if (angle <= Math.min(angles[from + 2]!, angles[to + 2]!)) return RAIL;
    if (angle <= Math.max(angles[from + 3]!, angles[to + 3]!)) return DECK + PATCHES.length;
    return DECK;
  };
}

/** For each whole millimetre the last row that does not lie behind it. */
function rowsBefore(xs: Float64Array): Uint32Array {
  const first = new Uint32Array(Math.ceil(xs[xs.length - 1]!) + 1);
  for (let x = 0, row = 0; x < first.length; x++) {
    while (row < xs.length - 2 && xs[row + 1]! <= x) row++;
    first[x] = row;
  }
  return first;
}

function bandsByRow({ rows, columns, positions: p }: Grid, band: number): Bands {
  const angles = new Float64Array(rows * 2 * 4);
  const sizes = new Float64Array(rows * 2 * 3);
  const along = new Float64Array(columns);
  for (let row = 0; row < rows; row++)
    for (let side = 0; side < 2; side++) {
      const first = (row * 2 + side) * columns;
      let half = 1;
      for (let column = 0; column < columns; column++) {
        const at = 3 * (first + column);
        half = Math.max(half, Math.abs(p[at + 1]!));
        const before = column === 0 ? at : at - 3;
        along[column] = (along[column - 1] ?? 0) + Math.hypot(p[at + 1]! - p[before + 1]!, p[at + 2]! - p[before + 2]!);
      }
      const low = p[3 * first + 2]!;
      const high = p[3 * (first + columns - 1) + 2]!;
      const size = [half, Math.max(1, (high - low) / 2), (low + high) / 2] as const;
      sizes.set(size, 3 * (row * 2 + side));
      const isRail = (column: number) =>
        Math.abs(upOf(p, first, column, row + 1 < rows ? columns : -columns)) < PATCH_COSINE;
      let begins = 0;
      while (begins < columns - 2 && !isRail(begins)) begins++;
      let ends = columns - 2;
      while (ends > begins && !isRail(ends)) ends--;
      const angleAt = (length: number) => {
        let column = 0;
        while (column < columns - 2 && along[column + 1]! < length) column++;
        const share = Math.max(0, Math.min(1, (length - along[column]!) / (along[column + 1]! - along[column]! || 1)));
        const at = 3 * (first + column);
        const y = Math.abs(p[at + 1]! + share * (p[at + 4]! - p[at + 1]!));
        const z = p[at + 2]! + share * (p[at + 5]! - p[at + 2]!);
        return Math.atan2(y / size[0], -(z - size[2]) / size[1]);
      };
      angles.set(
        [
          angleAt(along[begins]! - band),
          angleAt(along[begins + 1]! + band),
          angleAt(along[ends]! - band),
          angleAt(along[ends + 1]! + band),
        ],
        4 * (row * 2 + side),
      );
    }
  return { angles, sizes };
}

/** How much a cell looks up, as a cosine: between a column and the next, and a row and the one `on` points further. */
function upOf(p: Float64Array, first: number, column: number, on: number): number {
  const a = 3 * (first + column);
  const d = a + 6 * on;
  const [ux, uy, uz] = [p[d + 3]! - p[a]!, p[d + 4]! - p[a + 1]!, p[d + 5]! - p[a + 2]!];
  const [wx, wy, wz] = [p[d]! - p[a + 3]!, p[d + 1]! - p[a + 4]!, p[d + 2]! - p[a + 5]!];
  const [x, y, z] = [uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx];
  return z / (Math.sqrt(x * x + y * y + z * z) || 1);
}
