import type { Board } from '../board/board.js';
import type { Lattice } from '../contour/isolines.js';
import { placementOf } from './placementOf.js';
import { measuring, noAllowances } from './allowances.js';
import { depthsOf } from './nearest.js';
import type { Line, SawnStrip } from './sawn.js';
import { SIDES, type Skin } from './skin.js';
import type { InBlank } from './inBlank.js';

/**
 * What stands over the finished deck, or under the bottom, of one strip, on a lattice over it: `x`, `y` board frame, as
 * it lies in the glue-up; the value is the allowance, mm; NaN where the surface has turned over into the rail.
 */
export interface StripMap extends Lattice {
  /** Its place in the sawn strips. */
  readonly strip: number;
  readonly side: 'deck' | 'bottom';
}

/** Between knots along and across, mm: at least and at most. */
const ALONG = 20;
const ACROSS = 12;
/** Where the surface falls more steeply than this it is the rail's. */
const STEEPEST = 1;

/** Deck and bottom of every strip that was looked at: of the right ones alone where left and right are alike. */
export function stripMaps(board: Board, blank: InBlank): StripMap[] {
  const depths = depthsOf(blank.moulded);
  return blank.strips.flatMap((strip, i): StripMap[] => {
    if (blank.isAlike && strip.member.side === 'L') return [];
    return (['deck', 'bottom'] as const).map((side) => {
      const { columns, x, y, z } = knots(board, strip.member, side);
      const points = Uint32Array.from(z.keys()).filter((k) => !Number.isNaN(z[k]!));
      const at = new Float64Array(3 * z.length);
      for (const k of points) at.set([x[k]!, y[k]!, z[k]!], 3 * k);
      const skin: Skin = {
        side: new Uint8Array(z.length).fill(SIDES.indexOf(side)),
        strip: new Uint8Array(z.length).fill(i),
        at,
      };
      const found = noAllowances(skin);
      measuring(skin, blank.strips, board.length, depths)(placementOf(blank.fits, strip.member.id), found, points);
      const value = z.map((each, k) => (Number.isNaN(each) ? NaN : found.over[k]!));
      return { strip: i, side, columns, x, y, value };
    });
  });
}

function knots({ grid, surface, length }: Board, { left, right }: SawnStrip['member'], side: 'deck' | 'bottom') {
  const rows: number[] = [];
  grid.xs.forEach((x, row) => {
    if (row === 0 || x === length || x - grid.xs[rows.at(-1)!]! >= ALONG) rows.push(row);
  });
  const edges = rows.map((row) => {
    const x = grid.xs[row]!;
    const [leftRail, rightRail] = surface.outlines;
    const line = (joint: Line | undefined, rail: number) => (joint ? joint.at + joint.slope * x : rail);
    return [
      Math.max(line(left, -Infinity), -leftRail.outer(x)),
      Math.min(line(right, Infinity), rightRail.outer(x)),
    ] as const;
  });
  const widest = Math.max(...edges.map(([from, to]) => to - from));
  const columns = 1 + Math.max(1, Math.ceil(widest / ACROSS));
  const [x, y, z] = [0, 1, 2].map(() => new Float64Array(rows.length * columns).fill(NaN)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  rows.forEach((row, i) => {
    const [from, to] = edges[i]!;
    if (to <= from) return;
    for (let column = 0; column < columns; column++) {
      const k = i * columns + column;
      x[k] = grid.xs[row]!;
      y[k] = from + ((to - from) * column) / (columns - 1);
      z[k] = heightAt(grid, row, y[k]!, side);
    }
  });
  return { columns, x, y, z };
}

/** Height of the finished surface at a row of its grid, mm; NaN beside it, and where it is the rail's. */
function heightAt(
  { columns, apex, positions }: Board['grid'],
  row: number,
  y: number,
  side: 'deck' | 'bottom',
): number {
  const half = y < 0 ? 0 : 1;
  const [from, to] = side === 'deck' ? [apex, columns - 1] : [0, apex];
  for (let column = from; column < to; column++) {
    const i = 3 * ((row * 2 + half) * columns + column);
    const [ya, za, yb, zb] = [positions[i + 1]!, positions[i + 2]!, positions[i + 4]!, positions[i + 5]!];
    if ((ya - y) * (yb - y) > 0 || ya === yb) continue;
    const slope = (zb - za) / (yb - ya);
    return Math.abs(slope) > STEEPEST ? NaN : za + slope * (y - ya);
  }
  return NaN;
}
