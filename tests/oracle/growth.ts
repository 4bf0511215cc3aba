import { sharpCorners } from '../../src/contour/sharp.js';
import { areaOf } from '../../src/contour/area.js';
import { easeCorners } from '../../src/contour/ease.js';
import { PATCHES } from '../../src/board/mesh.js';
import type { Chamber } from '../../src/chamber/chamber.js';
import { slotsOf } from '../../src/chamber/slots.js';
import { keepOutsOn } from '../../src/chamber/keepOut.js';
import { blockedBy } from '../../src/chamber/obstacle.js';
import { farOver, farSide, goesThrough } from '../../src/chamber/through.js';
import type { Row } from '../../src/layup/layup.js';
import type { Plan } from '../../src/plan.js';
import { solidOf } from '../../src/wall/solid.js';
import { wallsOf } from '../../src/wall/walls.js';

type Pair = readonly [number, number];
type Edge = 'top' | 'bottom' | 'nose' | 'tail' | 'depth';

/**
 * A chamber that could be larger: one of its edges moved as far as the certified walls let it, and by what share that
 * makes it larger.
 */
export interface Growth {
  readonly chamber: string;
  readonly edge: Edge;
  readonly by: number;
  readonly share: number;
}

/** Further than this, mm, no edge is moved; how near the limit is found. */
const MOST = 60;
const NEAR = 0.02;

/**
 * The slow and obvious way to a larger chamber: every edge by itself, moved by halving steps as far as all walls hold,
 * over its whole length. Chambers beside glue or a keep-out are left out, as those end them.
 */
export function growths(plan: Plan, chambers = plan.chambers): Growth[] {
  const ended = new Set(plan.notes.filter(({ why }) => why === 'dot' || why === 'keep-out').map(({ where }) => where));
  return chambers
    .filter(({ id }) => !ended.has(id) && !ended.has(id.replace(/[a-z]$/, '')))
    .flatMap((chamber) => {
      const row = plan.layup.rows.find(({ id }) => id === chamber.row)!;
      return (['top', 'bottom', 'nose', 'tail', 'depth'] as const).map((edge) => grown(chamber, row, edge, plan));
    });
}

function grown(chamber: Chamber, row: Row, edge: Edge, plan: Plan): Growth {
  const stands = (by: number) => {
    const moved = movedBy(chamber, edge, by, plan);
    return moved && isAllowed(moved, row, plan, chamber) ? moved : undefined;
  };
  // What does not hold a hundredth more has grown enough, and need not be asked further.
  if (!stands(hundredth(chamber, edge))) return { chamber: chamber.id, edge, by: 0, share: 0 };
  let [low, high] = [0, MOST];
  while (high - low > NEAR) {
    const middle = (low + high) / 2;
    if (stands(middle)) low = middle;
    else high = middle;
  }
  const before = areaOf(chamber.contour) * chamber.depth[1];
  const after = stands(low);
  return { chamber: chamber.id, edge, by: low, share: after ? after.volume / before - 1 : 0 };
}

/** How far an edge is to be moved for a hundredth more, mm. */
function hundredth({ contour, profile, depth }: Chamber, edge: Edge): number {
  if (edge === 'depth') return depth[1] / 100;
  const s = profile.map(([each]) => each);
  const z = profile.map(([, each]) => each);
  const across = edge === 'top' || edge === 'bottom' ? s : z;
  return areaOf(contour) / (Math.max(...across) - Math.min(...across)) / 100;
}

interface Moved {
  readonly profile: readonly Pair[];
  readonly depth: number;
  readonly volume: number;
  readonly least: number;
}

function movedBy({ contour, depth }: Chamber, edge: Edge, by: number, { job }: Plan): Moved | undefined {
  const corners = sharpCorners(contour);
  const last = corners.reduce((far, [s], i) => (s > corners[far]![0] + 1e-7 ? i : far), 0);
  let bottom = corners.slice(0, last + 1);
  let top = corners.slice(last + 1).reverse();
  if (edge === 'top') top = top.map(([s, z]): Pair => [s, z + by]);
  if (edge === 'bottom') bottom = bottom.map(([s, z]): Pair => [s, z - by]);
  if (edge === 'nose')
    [top, bottom] = [top, bottom].map((each) => [on(each[0]!, each[1]!, -by), ...each.slice(1)]) as [Pair[], Pair[]];
  if (edge === 'tail')
    [top, bottom] = [top, bottom].map((each) => [
      ...each.slice(0, -1),
      on(each[each.length - 1]!, each[each.length - 2]!, by),
    ]) as [Pair[], Pair[]];
  const eased = easeCorners([...bottom, ...[...top].reverse()], job.chambers.cutterDiameter / 2);
  if (!eased) return undefined;
  const deep = depth[1] + (edge === 'depth' ? by : 0);
  const least = Math.min(top[0]![1] - bottom[0]![1], top[top.length - 1]![1] - bottom[bottom.length - 1]![1]);
  return { profile: eased.profile, depth: deep, volume: areaOf(eased.contour) * deep, least };
}

/** An end of an edge drawn on along it. */
function on([s, z]: Pair, [s2, z2]: Pair, by: number): Pair {
  return [s + by, z + (by * (z - z2)) / (s - s2)];
}

function isAllowed({ profile, depth, least }: Moved, row: Row, plan: Plan, chamber: Chamber): boolean {
  const { job, board, trees, asked } = plan;
  const spec = job.chambers;
  const s = profile.map(([each]) => each);
  const stretch = { from: Math.min(...s), to: Math.max(...s) };
  const slot = slotsOf(row, spec, board.length).find(({ place }) => place === chamber.place)!;
  if (stretch.from < slot.from - 1e-6 || stretch.to > slot.to + 1e-6) return false;
  const corner = 1.25 * spec.cutterDiameter;
  if (least < Math.max(spec.smallest.height, corner)) return false;
  const { origin, along, inward } = row.face;
  for (const t of [0, depth])
    for (const each of s) {
      const x = origin[0] + each * along[0] + t * inward[0];
      if (x < spec.solidNose - 1e-6 || x > board.length - spec.solidTail + 1e-6) return false;
    }
  const far = farSide(row);
  if (!goesThrough(chamber, row)) {
    if (far && depth > farOver(far, stretch).least - spec.floor) return false;
    if (depth > job.routing.cutterLength - job.routing.guideStock) return false;
  } else if (depth > chamber.depth[1]) return false;
  else if (depth < farOver(far!, stretch).most - 0.05) return false;
  const low = Math.min(...profile.map(([, z]) => z));
  const high = Math.max(...profile.map(([, z]) => z));
  for (const obstacle of keepOutsOn(board, plan.layup, job)) {
    const blocked = blockedBy(obstacle, row, depth);
    if (blocked && blocked.from < stretch.to && blocked.to > stretch.from && blocked.low < high && blocked.high > low)
      return false;
  }
  const { diameter, clearance } = job.dots;
  for (const dot of plan.glue.dots.filter(({ sides }) => sides.some((side) => side.row === row.id))) {
    // Chambers go around the square about a dot.
    const off = diameter / 2 + clearance;
    if (dot.s - off < stretch.to && dot.s + off > stretch.from && dot.z - off < high && dot.z + off > low) return false;
  }
  const walls = wallsOf(solidOf(row.face, profile, [0, depth]), trees, board.mesh.chordError, chamber.at).thickness;
  return PATCHES.every((patch) => walls[patch] >= asked[patch]);
}
