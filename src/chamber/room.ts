import type { Grid } from '../board/grid.js';
import type { Face } from '../layup/layup.js';
import type { Shell } from './shell.js';

/**
 * The room within the shell as seen from a face: for evenly spaced `s` and evenly spaced depths, how high and how low a
 * chamber may reach that is open from the face down to that depth.
 *
 * Layout: `top` and `bottom` hold `count` numbers a depth, `s` = i · `step`; `NaN` where there is no room. Depth j is
 * `j · layer`.
 */
export interface Room {
  readonly step: number;
  readonly count: number;
  readonly layer: number;
  readonly layers: number;
  readonly top: Float64Array;
  readonly bottom: Float64Array;
}

/** Spacing along the face, mm: a few nodes a chamber are drawn from these. */
const STEP = 8;

/** The room behind a face to the given depth, mm. */
export function roomOf(grid: Grid, shell: Shell, face: Face, deepest: number, layer: number): Room {
  const layers = Math.max(1, Math.floor(deepest / layer + 1e-9) + 1);
  const cuts = cutShell(grid, shell, face, layers, layer);
  const count = Math.ceil(grid.xs[grid.rows - 1]! / face.along[0] / STEP) + 1;
  const top = new Float64Array(layers * count).fill(NaN);
  const bottom = new Float64Array(layers * count).fill(NaN);
  for (let j = 0; j < layers; j++) {
    resample(cuts.topS, cuts.top, j * grid.rows, grid.rows, top, j * count, count);
    resample(cuts.bottomS, cuts.bottom, j * grid.rows, grid.rows, bottom, j * count, count);
  }
  // A chamber open to a depth must fit at every depth before it: NaN stays NaN.
  for (let i = count; i < top.length; i++) {
    top[i] = Math.min(top[i]!, top[i - count]!);
    bottom[i] = Math.max(bottom[i]!, bottom[i - count]!);
  }
  return { step: STEP, count, layer, layers, top, bottom };
}

/**
 * Where the planes at each depth cut the rows of the shell: lowest crossing of the deck side, highest of the bottom
 * side.
 */
function cutShell(grid: Grid, shell: Shell, face: Face, layers: number, layer: number) {
  const size = layers * grid.rows;
  const top = new Float64Array(size).fill(NaN);
  const topS = new Float64Array(size);
  const bottom = new Float64Array(size).fill(NaN);
  const bottomS = new Float64Array(size);
  for (let row = 0; row < grid.rows; row++) {
    for (let side = 0; side < 2; side++) {
      const first = (row * 2 + side) * grid.columns;
      if (isBeside(shell, face, first, grid, (layers - 1) * layer)) continue;
      let s0 = 0;
      let t0 = NaN;
      let z0 = shell[3 * first + 2]!;
      for (let column = 0; column < grid.columns; column++) {
        const at = 3 * (first + column);
        const dx = shell[at]! - face.origin[0];
        const dy = shell[at + 1]! - face.origin[1];
        const s1 = dx * face.along[0] + dy * face.along[1];
        const t1 = dx * face.inward[0] + dy * face.inward[1];
        const z1 = shell[at + 2]!;
        const low = Math.max(0, Math.ceil(Math.min(t0, t1) / layer));
        const high = Math.min(layers - 1, Math.floor(Math.max(t0, t1) / layer));
        for (let j = low; j <= high; j++) {
          const share = t1 === t0 ? 0 : (j * layer - t0) / (t1 - t0);
          const z = z0 + share * (z1 - z0);
          const cut = j * grid.rows + row;
          if (column > grid.apex) {
            if (!(top[cut]! <= z)) {
              top[cut] = z;
              topS[cut] = s0 + share * (s1 - s0);
            }
          } else if (!(bottom[cut]! >= z)) {
            bottom[cut] = z;
            bottomS[cut] = s0 + share * (s1 - s0);
          }
        }
        s0 = s1;
        t0 = t1;
        z0 = z1;
      }
    }
  }
  return { top, topS, bottom, bottomS };
}

/**
 * Whether a half of a row lies wholly before the face or beyond the last depth: its keel and its apex do, and the rest
 * lies between.
 */
function isBeside(shell: Shell, { origin, inward }: Face, first: number, { apex }: Grid, deepest: number): boolean {
  const depth = (point: number) =>
    (shell[3 * point]! - origin[0]) * inward[0] + (shell[3 * point + 1]! - origin[1]) * inward[1];
  const keel = depth(first);
  const rail = depth(first + apex);
  return Math.max(keel, rail) < -BESIDE || Math.min(keel, rail) > deepest + BESIDE;
}

/** A shell may fold over by a little at the rail; so much beyond, mm, is certainly beside. */
const BESIDE = 40;

/** Brings values at rising but uneven `s` to even steps; a step next to a place without value has none. */
function resample(
  s: Float64Array,
  values: Float64Array,
  from: number,
  rows: number,
  out: Float64Array,
  to: number,
  count: number,
): void {
  for (let row = from; row + 1 < from + rows; row++) {
    const a = s[row]!;
    const b = s[row + 1]!;
    if (Number.isNaN(values[row]!) || Number.isNaN(values[row + 1]!) || b <= a) continue;
    const last = Math.min(count - 1, Math.floor(b / STEP));
    for (let i = Math.max(0, Math.ceil(a / STEP)); i <= last; i++) {
      out[to + i] = values[row]! + ((i * STEP - a) / (b - a)) * (values[row + 1]! - values[row]!);
    }
  }
}

/**
 * How high (or low) a chamber may reach at `s` at depth number `j`; `NaN` without room. Straight between the even
 * steps.
 */
export function boundAt(room: Room, bounds: Float64Array, j: number, s: number): number {
  const place = s / room.step;
  const i = Math.min(room.count - 2, Math.max(0, Math.floor(place)));
  const a = bounds[j * room.count + i]!;
  const share = place - i;
  return share === 0 ? a : a + share * (bounds[j * room.count + i + 1]! - a);
}
