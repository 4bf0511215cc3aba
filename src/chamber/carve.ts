import type { Point } from '../contour/point.js';
import { easeCorners } from '../contour/ease.js';
import type { ChamberSpec } from '../job/job.js';
import { toFace } from '../layup/frame.js';
import type { Face } from '../layup/layup.js';
import type { Vertex } from '../contour/vertex.js';
import { PATCHES, type Patch } from '../board/mesh.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { solidOf } from '../wall/solid.js';
import { onSurface, wallsOf, type Places, type Walls } from '../wall/walls.js';
import type { Why } from './chamber.js';
import { crop, leastHeight, type Edges } from './edges.js';

/** A chamber that stands: its cut and its proved walls, face frame, mm. */
export interface Carved {
  /** Its edges before their corners were eased. */
  readonly edges: Edges;
  readonly contour: readonly Vertex[];
  readonly profile: readonly Point[];
  readonly depth: number;
  readonly walls: Walls;
}

/** What the proof is made against. */
export interface Surroundings {
  readonly trees: PatchTrees;
  readonly chordError: number;
  readonly asked: Readonly<Record<Patch, number>>;
}

/** Chambers grow until some wall is met within this, mm. */
export const MET = 0.3;
/** What a correction leaves over, mm, so that the next proof does not fail by rounding. */
const OVER = 0.02;
const GROWN_SHORT = 0.1;
/**
 * A surface leans at most 45° on its own patch, so a wall grows by at least this share of a move straight away from it.
 */
export const LEAN = Math.SQRT1_2;
/** Corrections before a chamber is given up. */
const TRIES = 10;

/**
 * Proves a chamber and corrects it until every wall is at least what is asked and some wall is met: edges are moved up
 * or down, ends drawn in, the depth taken back. Gives the reason where no chamber can stand.
 *
 * @param near where its walls may be thinnest, as `wallsOf` takes it
 */
export function carve(
  face: Face,
  drawn: Edges,
  deep: number,
  spec: ChamberSpec,
  proof: Surroundings,
  near?: Places,
): Carved | { failed: Why } {
  let edges = drawn;
  let depth = deep;
  let stood: Carved | undefined;
  let places = near;
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const eased = easedEdges(edges, spec);
    if (!eased) return stood ?? { failed: 'cutter' };
    const walls = wallsOf(solidOf(face, eased.profile, [0, depth]), proof.trees, proof.chordError, places);
    // Moved by little, it is thinnest near where it was.
    places = onSurface(walls);
    const spare = (patch: Patch) => walls.thickness[patch] - proof.asked[patch];
    const short = PATCHES.filter((patch) => spare(patch) < 0);

    if (short.length === 0) {
      stood = { ...eased, edges, depth, walls };
      const least = PATCHES.reduce((a, b) => (spare(b) < spare(a) ? b : a));
      if (spare(least) <= MET || attempt > TRIES / 2) return stood;
      const more = spare(least) - GROWN_SHORT;
      edges = least === 'bottom' ? shifted(edges, 0, -more) : shifted(edges, more, 0);
      continue;
    }
    // What has once stood is not given up for a growth that failed.
    if (stood) return stood;
    for (const patch of short) {
      const lack = -spare(patch) + OVER;
      if (patch === 'deck') edges = shifted(edges, -lack / LEAN, 0);
      else if (patch === 'bottom') edges = shifted(edges, 0, lack / LEAN);
      else {
        const [x, y, z] = walls.places.rail.onChamber;
        const [s, t] = toFace(face, x, y);
        const from = edges.bottom[0]![0];
        const to = edges.bottom[edges.bottom.length - 1]![0];
        const corner = spec.cutterDiameter / 2;
        if (t > depth / 2) depth -= lack / LEAN;
        else if (s < from + corner) edges = crop(edges, from + lack / LEAN, to);
        else if (s > to - corner) edges = crop(edges, from, to - lack / LEAN);
        else edges = z > middleHeight(edges) ? shifted(edges, -lack / LEAN, 0) : shifted(edges, 0, lack / LEAN);
      }
    }
    const length = edges.bottom[edges.bottom.length - 1]![0] - edges.bottom[0]![0];
    const { smallest } = spec;
    if (length < smallest.length || depth < smallest.depth || leastHeight(edges) < smallest.height) break;
  }
  return stood ?? { failed: 'unproved' };
}

/** The cut between two edges, its corners eased to the cutter; undefined where the cutter does not fit. */
export function easedEdges({ top, bottom }: Edges, { cutterDiameter }: ChamberSpec) {
  return easeCorners([...bottom, ...[...top].reverse()], cutterDiameter / 2);
}

export function shifted({ top, bottom }: Edges, topBy: number, bottomBy: number): Edges {
  const move = (edge: readonly Point[], by: number) => (by === 0 ? edge : edge.map(([s, z]): Point => [s, z + by]));
  return { top: move(top, topBy), bottom: move(bottom, bottomBy) };
}

function middleHeight({ top, bottom }: Edges): number {
  return (top[0]![1] + bottom[0]![1]) / 2;
}
