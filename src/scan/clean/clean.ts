import { distance3 } from './distance.js';
import type { ScanFault } from '../fault.js';
import type { Triangles } from '../triangles.js';
import { fillingOf } from './fill.js';
import { ALONE, MANY, matesOf, nextSide } from './mates.js';
import { rimsOf } from './rims.js';
import { shellsOf, type Shell } from './shells.js';
import { joined, welded } from './weld.js';

/** A place where triangles are missing, mm. */
export interface Hole {
  /** Numbers of the points around it. */
  readonly rim: readonly number[];
  /** How wide it is where it is not merely long. */
  readonly width: number;
}

/** What was put right, told to the builder. */
export interface Mended {
  /** Triangles without area, and twice the same. */
  readonly dropped: number;
  /** Triangles that were turned the other way than those around them. */
  readonly turned: number;
  /** Pieces that belong to no board, and the largest of them from corner to corner, mm. */
  readonly pieces: number;
  readonly largestPiece: number;
  /** Cracks and holes too small to matter, closed. */
  readonly closed: number;
}

/** A mesh that is closed, turned outward and joined. */
export interface Cleaned {
  /** Points in mm, in the frame of the file. */
  readonly mesh: Triangles;
  /** Where in `mesh.triangles` begin those that close holes and cracks. */
  readonly measured: number;
  /** Those wider than `HOLE_BOUND`. */
  readonly holes: readonly Hole[];
  readonly mended: Mended;
}

/** A hole no wider than this, mm, is closed without a word: what is missing there lies within half of it. */
export const HOLE_BOUND = 3;
/** Points on the edges of surfaces that lie this near to each other, mm, are one. */
const JOIN = 0.02;
/** Of the largest shell's size: smaller ones are crumbs. */
const CRUMB = 0.1;
/** A shell at least so large beside another, both as good as closed, is a board of its own. */
const BOARD = 0.5;
const CLOSED = 0.2;

/** Joins, turns outward, parts from crumbs and closes what was read, mm. */
export function cleaned(read: Triangles): Cleaned | ScanFault {
  const mesh = joinedAtEdges(withoutDoubles(mated(welded(read))));
  const { positions } = mesh;
  if (mesh.triangles.length === 0) return { kind: 'flat', triangles: read.triangles.length / 3 };
  const dropped = (read.triangles.length - mesh.triangles.length) / 3;
  const { shells, turned } = shellsOf(mesh, mesh.mates);
  const two = twoBoards(shells);
  if (two) return two;
  const [largest] = shells;
  const kept = shells.filter(({ size }) => size >= CRUMB * largest!.size);
  const crumbs = shells.slice(kept.length);
  const triangles = crumbs.length === 0 ? mesh.triangles : membersOf(mesh.triangles, kept);
  const isClosed = !mesh.mates.includes(ALONE);
  const rims = isClosed ? [] : rimsOf(triangles, positions.length / 3);
  const fillings = rims.map((rim) => ({ rim, ...fillingOf(rim, positions) }));
  const whole = new Uint32Array(triangles.length + fillings.reduce((sum, each) => sum + each.triangles.length, 0));
  whole.set(triangles);
  let at = triangles.length;
  for (const each of fillings) {
    whole.set(each.triangles, at);
    at += each.triangles.length;
  }
  const holes = fillings.filter(({ width }) => width > HOLE_BOUND).map(({ rim, width }) => ({ rim, width }));
  return {
    mesh: { positions, triangles: whole },
    measured: triangles.length,
    holes,
    mended: {
      dropped,
      turned,
      pieces: crumbs.length,
      largestPiece: crumbs[0]?.size ?? 0,
      closed: fillings.length - holes.length,
    },
  };
}

/** The cleaned mesh in another unit: `factor` of the old one to one of the new. */
export function scaled(read: Triangles, factor: number): Triangles {
  return factor === 1 ? read : { ...read, positions: read.positions.map((value) => value * factor) };
}

/** How far across a hole is at most, mm. */
export function spanOf({ rim }: Hole, positions: Float64Array): number {
  let most = 0;
  const step = Math.max(1, Math.floor(rim.length / 200));
  for (let i = 0; i < rim.length; i += step)
    for (let j = i + step; j < rim.length; j += step) most = Math.max(most, distance3(positions, rim[i]!, rim[j]!));
  return most;
}

/** Triangles with what `matesOf` finds of them. */
type Mated = Triangles & { readonly mates: Int32Array };

const mated = (mesh: Triangles): Mated => ({ ...mesh, mates: matesOf(mesh.triangles, mesh.positions.length / 3) });

/** Of triangles that have the same three corners only the first. */
function withoutDoubles(mesh: Mated): Mated {
  const { triangles, mates } = mesh;
  const seen = new Set<string>();
  const kept = new Uint32Array(triangles.length);
  let length = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    if (mayBeDouble(mates, t)) {
      const name = [...triangles.subarray(t, t + 3)].sort((a, b) => a - b).join();
      if (seen.has(name)) continue;
      seen.add(name);
    }
    kept[length++] = triangles[t]!;
    kept[length++] = triangles[t + 1]!;
    kept[length++] = triangles[t + 2]!;
  }
  return length === triangles.length ? mesh : mated({ ...mesh, triangles: kept.subarray(0, length) });
}

/** Whether a triangle may be there twice: all its sides are shared by many, or by one and the same other. */
function mayBeDouble(mates: Int32Array, t: number): boolean {
  const [a, b, c] = [mates[t]!, mates[t + 1]!, mates[t + 2]!];
  if (a === ALONE || b === ALONE || c === ALONE) return false;
  if (a === MANY || b === MANY || c === MANY) return true;
  const other = Math.floor(a / 3);
  return other === Math.floor(b / 3) && other === Math.floor(c / 3);
}

/** The same with the points of sides that are alone joined where they all but meet. */
function joinedAtEdges(mesh: Mated): Mated {
  const { triangles, mates } = mesh;
  const points = new Set<number>();
  for (let h = 0; h < triangles.length; h++) {
    if (mates[h] !== ALONE) continue;
    points.add(triangles[h]!);
    points.add(triangles[nextSide(h)]!);
  }
  const together = joined(mesh, points, JOIN);
  return together === mesh ? mesh : mated(together);
}

function membersOf(triangles: Uint32Array, shells: readonly Shell[]): Uint32Array {
  const kept = new Uint32Array(3 * shells.reduce((sum, { members }) => sum + members.length, 0));
  let at = 0;
  for (const { members } of shells)
    for (const t of members) for (let h = 3 * t; h < 3 * t + 3; h++) kept[at++] = triangles[h]!;
  return kept;
}

function twoBoards([first, second]: readonly Shell[]): ScanFault | undefined {
  if (!first || !second || second.size < BOARD * first.size || first.open > CLOSED || second.open > CLOSED)
    return undefined;
  const gaps = [0, 1, 2].map((axis) =>
    Math.max(second.low[axis]! - first.high[axis]!, first.low[axis]! - second.high[axis]!),
  );
  const isWithin = [0, 1, 2].every(
    (axis) => second.low[axis]! >= first.low[axis]! && second.high[axis]! <= first.high[axis]!,
  );
  if (isWithin) return undefined;
  return { kind: 'twoBoards', first: first.size, second: second.size, apart: Math.max(0, ...gaps) };
}
