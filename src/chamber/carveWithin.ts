import type { Point } from '../contour/point.js';
import type { ChamberSpec } from '../job/job.js';
import type { Face } from '../layup/layup.js';
import { solidOf } from '../wall/solid.js';
import { wallsOf, type Places } from '../wall/walls.js';
import { carve, easedEdges, type Carved, type Surroundings } from './carve.js';
import type { Why } from './chamber.js';
import { leastHeight, type Edges } from './edges.js';
import type { Band } from './filling.js';
import { PATCHES } from '../board/mesh.js';

/** Corrections before a chamber between obstacles is given up. */
const TRIES = 4;
/** What a correction leaves over, mm, so that the next one does not fail by rounding. */
const OVER = 0.02;

/** Carves a chamber that must also stay between two heights, mm, because it passes over or under something. */
export function carveWithin(
  { low, high }: Band,
  face: Face,
  drawn: Edges,
  deep: number,
  spec: ChamberSpec,
  proof: Surroundings,
  near?: Places,
): Carved | { failed: Why } {
  if (low === -Infinity && high === Infinity) return carve(face, drawn, deep, spec, proof, near);
  let edges = drawn;
  for (let attempt = 0; attempt < TRIES; attempt++) {
    // As drawn it lies between the heights; carving grows a chamber only when its walls let it, and then perhaps too
    // far.
    const asDrawn = standing(face, edges, deep, spec, proof, near);
    if (asDrawn) return asDrawn;
    const carved = carve(face, edges, deep, spec, proof, near);
    if ('failed' in carved) return carved;
    const z = carved.profile.map(([, each]) => each);
    const over = Math.max(0, Math.max(...z) - high);
    const under = Math.max(0, low - Math.min(...z));
    if (over === 0 && under === 0) return carved;
    edges = drawnIn(edges, over > 0 ? over + OVER : 0, under > 0 ? under + OVER : 0);
    if (leastHeight(edges) < spec.smallest.height) break;
  }
  return { failed: 'unproved' };
}

function standing(
  face: Face,
  edges: Edges,
  deep: number,
  spec: ChamberSpec,
  proof: Surroundings,
  near?: Places,
): Carved | undefined {
  const eased = easedEdges(edges, spec);
  if (!eased) return undefined;
  const walls = wallsOf(solidOf(face, eased.profile, [0, deep]), proof.trees, proof.chordError, near);
  const sound = PATCHES.every((patch) => walls.thickness[patch] >= proof.asked[patch]);
  return sound ? { ...eased, edges, depth: deep, walls } : undefined;
}

function drawnIn({ top, bottom }: Edges, topBy: number, bottomBy: number): Edges {
  return {
    top: top.map(([s, z]): Point => [s, z - topBy]),
    bottom: bottom.map(([s, z]): Point => [s, z + bottomBy]),
  };
}
