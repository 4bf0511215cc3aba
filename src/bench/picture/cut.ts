import type { Point } from '../../contour/point.js';
import { nearestOn } from '../../contour/nearest.js';
import type { Face } from '../../layup/layup.js';
import type { Section } from './section.js';

/** A chamber as far as a picture needs it. */
export interface Pocket {
  readonly profile: readonly Point[];
  readonly depth: readonly [number, number];
}

/** Depths at which a chamber is looked at where its face is not parallel to the centreline. */
const LAYERS = 12;

/**
 * What a cross-section shows of a chamber: the outline `[y, z]` of its solid in the plane `x`, in order around it;
 * empty where the plane passes it by.
 */
export function cutAt({ profile, depth }: Pocket, { origin, along, inward }: Face, x: number): Point[] {
  const layers = Math.abs(inward[0]) < 1e-9 ? 1 : LAYERS;
  const low: Point[] = [];
  const high: Point[] = [];
  for (let i = 0; i <= layers; i++) {
    const t = depth[0] + ((depth[1] - depth[0]) * i) / layers;
    const s = (x - origin[0] - t * inward[0]) / along[0];
    const heights = heightsAt(profile, s);
    if (!heights) continue;
    const y = origin[1] + s * along[1] + t * inward[1];
    low.push([y, heights[0]]);
    high.push([y, heights[1]]);
  }
  return low.length < 2 ? [] : [...low, ...high.reverse()];
}

/** Lowest and highest point of a profile at `s`. */
export function heightsAt(profile: Pocket['profile'], s: number): [low: number, high: number] | undefined {
  let low = Infinity;
  let high = -Infinity;
  profile.forEach(([s0, z0], i) => {
    const [s1, z1] = profile[(i + 1) % profile.length]!;
    if (s < Math.min(s0, s1) || s > Math.max(s0, s1)) return;
    const z = s1 === s0 ? z1 : z0 + ((s - s0) / (s1 - s0)) * (z1 - z0);
    low = Math.min(low, z, s0 === s ? z0 : z);
    high = Math.max(high, z, s0 === s ? z0 : z);
  });
  return low < high ? [low, high] : undefined;
}

export type Wall = 'deck' | 'bottom' | 'rail';

/** A wall as it is in one cross-section: from the chamber to the surface, the shortest way within the plane, mm. */
export interface WallHere {
  readonly from: Point;
  readonly to: Point;
  readonly size: number;
}

/**
 * The walls of a cut chamber within its cross-section. The wall in space may be thinner: it is the plan that proves it.
 */
export function wallsHere(cut: readonly Point[], section: Section): Partial<Record<Wall, WallHere>> {
  const found: Partial<Record<Wall, WallHere>> = {};
  const keep = (wall: Wall, from: Point, to: Point) => {
    const size = Math.hypot(from[0] - to[0], from[1] - to[1]);
    if (size < (found[wall]?.size ?? Infinity)) found[wall] = { from, to, size };
  };
  for (const half of [section.left, section.right]) {
    for (let i = 1; i < half.length; i++) {
      const a = half[i - 1]!;
      const b = half[i]!;
      const wall = patchOf(a, b);
      cut.forEach((c, k) => {
        const d = cut[(k + 1) % cut.length]!;
        keep(wall, c, nearestOn(a, b, c));
        keep(wall, nearestOn(c, d, a), a);
        keep(wall, nearestOn(c, d, b), b);
      });
    }
  }
  return found;
}

/**
 * As on the surface: the rail is what has turned more than 45° from up or down. Outward runs the bottom, back inward
 * the deck.
 */
function patchOf(a: Point, b: Point): Wall {
  if (Math.abs(b[0] - a[0]) < Math.abs(b[1] - a[1])) return 'rail';
  return Math.abs(b[0]) < Math.abs(a[0]) ? 'deck' : 'bottom';
}
