import type { Grid } from './grid.js';

/**
 * The finished surface as triangles, closed and outward-oriented, in the board frame, mm.
 *
 * Layout: `positions` holds x, y, z of each vertex; `triangles` three vertex numbers each, counter-clockwise seen from
 * outside; `normals` the outward unit normal and `patches` one patch code of each triangle. `chordError` bounds how far
 * the smooth surface lies from the triangles, mm.
 */
export interface Mesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly normals: Float64Array;
  readonly patches: Uint8Array;
  /** A second patch that a triangle counts as too, 255 where there is none; absent where none does. */
  readonly alsoPatches?: Uint8Array;
  readonly chordError: number;
}

/** The three parts of the surface that ask for walls of their own, in the order of the codes in `Mesh.patches`. */
export const PATCHES = ['deck', 'bottom', 'rail'] as const;
export type Patch = (typeof PATCHES)[number];

/** A patch ends where the surface has turned 45° from up or down. */
export const PATCH_COSINE = Math.SQRT1_2;
/** A triangle of less than this area, mm², has no direction to speak of and is left to the rail. */
const NO_AREA = 1e-12;

/**
 * Joins the points of a grid to a closed surface: two flanks, the ends where the board is cut straight across, the
 * sides of a notch.
 */
export function meshOf(grid: Grid): Mesh {
  const { positions, same } = grid;
  const triangles = new Uint32Array(6 * same.length + 12 * (grid.rows + grid.columns));
  let count = 0;
  const add = (a: number, b: number, c: number) => {
    const i = same[a]!;
    const j = same[b]!;
    const k = same[c]!;
    if (i === j || j === k || k === i) return;
    triangles[count++] = i;
    triangles[count++] = j;
    triangles[count++] = k;
  };
  const point = (row: number, side: number, column: number) => (row * 2 + side) * grid.columns + column;
  /** Two triangles over a cell, corners in order around it seen from outside on the right; turned over on the left. */
  const addCell = (side: number, a: number, b: number, c: number, d: number) => {
    const second = side === 1 ? b : d;
    const last = side === 1 ? d : b;
    if (shorter(positions, a, c, second, last)) {
      add(a, second, c);
      add(a, c, last);
    } else {
      add(a, second, last);
      add(second, c, last);
    }
  };

  for (let row = 0; row + 1 < grid.rows; row++) {
    for (const side of [0, 1]) {
      for (let column = 0; column + 1 < grid.columns; column++) {
        addCell(
          side,
          point(row, side, column),
          point(row, side, column + 1),
          point(row + 1, side, column + 1),
          point(row + 1, side, column),
        );
      }
    }
  }
  for (let row = grid.notchRow; row + 1 < grid.rows; row++) {
    const last = grid.columns - 1;
    for (const side of [0, 1])
      addCell(side, point(row, side, last), point(row, side, 0), point(row + 1, side, 0), point(row + 1, side, last));
  }
  addEnd(grid, 0, (side, a, b, c) => (side === 1 ? add(a, c, b) : add(a, b, c)));
  addEnd(grid, grid.rows - 1, (side, a, b, c) => (side === 1 ? add(a, b, c) : add(a, c, b)));

  const indices = triangles.slice(0, count);
  const normals = normalsOf(positions, indices);
  return { positions, triangles: indices, normals, patches: patchesOf(normals), chordError: grid.chordError };
}

/** Whether the diagonal a–b of a cell is shorter than c–d. */
function shorter(p: Float64Array, a: number, b: number, c: number, d: number): boolean {
  const square = (i: number, j: number) =>
    (p[3 * i]! - p[3 * j]!) ** 2 + (p[3 * i + 1]! - p[3 * j + 1]!) ** 2 + (p[3 * i + 2]! - p[3 * j + 2]!) ** 2;
  return square(a, b) <= square(c, d);
}

/**
 * Closes an end row between bottom and deck, each side between its inner edge and the rail; nothing where the end has
 * no area.
 */
function addEnd(grid: Grid, row: number, add: (side: number, a: number, b: number, c: number) => void): void {
  const { apex, columns, positions } = grid;
  for (const side of [0, 1]) {
    const first = (row * 2 + side) * columns;
    const width = (i: number) => Math.abs(positions[3 * i + 1]!);
    let low = first;
    let high = first + columns - 1;
    while (low < first + apex || high > first + apex) {
      const stepLow = low < first + apex && (high === first + apex || width(low + 1) <= width(high - 1));
      const next = stepLow ? low + 1 : high - 1;
      add(side, low, next, high);
      if (stepLow) low = next;
      else high = next;
    }
  }
}

/** The outward unit normal of each triangle; zero where it has no area. */
export function normalsOf(p: Float64Array, triangles: Uint32Array): Float64Array {
  const normals = new Float64Array(triangles.length);
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 3 * triangles[t]!;
    const b = 3 * triangles[t + 1]!;
    const c = 3 * triangles[t + 2]!;
    const ux = p[b]! - p[a]!;
    const uy = p[b + 1]! - p[a + 1]!;
    const uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!;
    const vy = p[c + 1]! - p[a + 1]!;
    const vz = p[c + 2]! - p[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const size = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (size < NO_AREA) continue;
    normals[t] = nx / size;
    normals[t + 1] = ny / size;
    normals[t + 2] = nz / size;
  }
  return normals;
}

function patchesOf(normals: Float64Array): Uint8Array {
  const patches = new Uint8Array(normals.length / 3);
  for (let t = 0; t < patches.length; t++) {
    const up = normals[3 * t + 2]!;
    patches[t] = Math.abs(up) < PATCH_COSINE ? 2 : up > 0 ? 0 : 1;
  }
  return patches;
}
