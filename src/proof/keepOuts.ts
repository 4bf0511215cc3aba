import type { KeepOutSpec } from '../job/job.js';
import type { Fault } from './fault.js';
import { liesWithin, lineToPolygon, roundingOf, sharedArea, type Pair } from './plane.js';
import { depthTo, footprintOf, inPlan, type Published, type RoutedChamber } from './published.js';
import { heightsOver, type SortedMesh } from './surface.js';

/** Chambers that enter a keep-out, drawn on the plan or on a joint. */
export function inKeepOuts(routed: readonly RoutedChamber[], published: Published, surface: SortedMesh): Fault[] {
  const { keepOuts, jointKeepOuts } = published.job;
  return routed.flatMap((one) => [
    ...keepOuts.flatMap((keepOut) => enters(one, keepOut, surface)),
    ...jointKeepOuts.flatMap(({ name, joint, points }): Fault[] => {
      const section = sectionAt(one, joint, published);
      const shared = section ? sharedArea(section, onLine(joint, points, published)) : 0;
      return shared > (section ? roundingOf(section) : 0)
        ? [{ kind: 'keep-out', where: one.chamber.id, by: name, has: -Math.sqrt(shared), needs: 0 }]
        : [];
    }),
  ]);
}

/**
 * A keep-out on a joint is told straight from the nose: in the joint's own frame, along it, it lies a little further on
 * where the joint is flared.
 */
function onLine(joint: string, points: readonly Pair[], { layup }: Published): Pair[] {
  const stretched = Math.hypot(1, layup.joints.find(({ id }) => id === joint)!.slope);
  return points.map(([x, z]): Pair => [x * stretched, z]);
}

/** Over a keep-out of some depth, deck and bottom are asked for so close, mm. */
const CLOSE = 2;
/** What such a keep-out is missed by and still counts as kept, mm: deck and bottom bend between the places asked. */
const BEND = 0.15;

function enters(one: RoutedChamber, keepOut: KeepOutSpec, surface: SortedMesh): Fault[] {
  const footprint = footprintOf(one);
  const region = regionOf(keepOut);
  if (apart(footprint, region)) return [];
  const fault = (has: number): Fault => ({ kind: 'keep-out', where: one.chamber.id, by: keepOut.name, has, needs: 0 });
  const gap = gapInPlan(footprint, keepOut, region);
  if (gap > -GRAZE) return [];
  if (!keepOut.depth) return [fault(gap)];
  const { from, deep } = keepOut.depth;
  let worst = 0;
  const { origin, along } = one.row.face;
  for (const [x, y] of spread(footprint)) {
    if (!holds(keepOut, region, x, y)) continue;
    const over = heightsOver(surface, x, y);
    const s = (x - origin[0]) * along[0] + (y - origin[1]) * along[1];
    const span = spanAt(one.chamber.profile, s);
    if (!over || !span) continue;
    worst = Math.min(worst, from === 'deck' ? over.high - deep - span.high : span.low - over.low - deep);
  }
  return worst < -BEND ? [fault(worst)] : [];
}

/** What a keep-out only touches by less, mm, is not entered. */
const GRAZE = 0.01;

/**
 * How far a footprint stays off a keep-out's outline in plan, mm; not above 0 where they overlap: roughly by how much.
 */
function gapInPlan(footprint: readonly Pair[], keepOut: KeepOutSpec, region: readonly Pair[]): number {
  if (keepOut.kind === 'disc') {
    const middle: Pair = [keepOut.x, keepOut.y];
    return lineToPolygon(middle, middle, footprint) - keepOut.radius;
  }
  const shared = sharedArea(footprint, region);
  return shared > roundingOf(footprint) ? -Math.sqrt(shared) : 0;
}

function holds(keepOut: KeepOutSpec, region: readonly Pair[], x: number, y: number): boolean {
  if (keepOut.kind === 'disc') return Math.hypot(x - keepOut.x, y - keepOut.y) < keepOut.radius;
  return liesWithin([x, y], region);
}

/** A keep-out's outline in plan, mm; the square around a disc. */
function regionOf(keepOut: KeepOutSpec): readonly Pair[] {
  if (keepOut.kind === 'polygon') return keepOut.points;
  const { x, y } = keepOut;
  const [long, wide] =
    keepOut.kind === 'disc' ? [keepOut.radius, keepOut.radius] : [keepOut.length / 2, keepOut.width / 2];
  return [
    [x - long, y - wide],
    [x + long, y - wide],
    [x + long, y + wide],
    [x - long, y + wide],
  ];
}

/** Whether two polygons are parted by a line along or across the board. */
function apart(one: readonly Pair[], other: readonly Pair[]): boolean {
  return [0, 1].some((axis) => {
    const [a, b] = [one, other].map((each) => each.map((pair) => pair[axis]!));
    return Math.min(...a!) > Math.max(...b!) || Math.max(...a!) < Math.min(...b!);
  });
}

/** Places all over a footprint, its edges included, about `CLOSE` apart. */
function spread([a, b, , d]: readonly Pair[]): Pair[] {
  const [u, v] = [
    [b![0] - a![0], b![1] - a![1]],
    [d![0] - a![0], d![1] - a![1]],
  ] as const;
  const steps = (edge: readonly [number, number]) => Math.max(1, Math.ceil(Math.hypot(...edge) / CLOSE));
  const [m, n] = [steps(u), steps(v)];
  return Array.from({ length: (m + 1) * (n + 1) }, (_, i): Pair => {
    const [p, q] = [(i % (m + 1)) / m, Math.floor(i / (m + 1)) / n];
    return [a![0] + p * u[0] + q * v[0], a![1] + p * u[1] + q * v[1]];
  });
}

/** How low and how high a profile reaches at `s`, mm; undefined beside it. */
function spanAt(profile: readonly Pair[], s: number): { low: number; high: number } | undefined {
  let low = Infinity;
  let high = -Infinity;
  profile.forEach(([s0, z0], i) => {
    const [s1, z1] = profile[(i + 1) % profile.length]!;
    if (s < Math.min(s0, s1) || s > Math.max(s0, s1)) return;
    const at = s1 === s0 ? [z0, z1] : [z0 + ((s - s0) / (s1 - s0)) * (z1 - z0)];
    low = Math.min(low, ...at);
    high = Math.max(high, ...at);
  });
  return high >= low ? { low, high } : undefined;
}

/**
 * What a cutter leaves before a joint is no wall when it is thinner than this, mm: the chamber counts as open there.
 * Common practice, no source.
 */
const NO_WALL = 1;

/**
 * Where a chamber is open to a joint, in the joint's own frame: distance from its nose end along it, and height, mm. A
 * row's own face is its joint's; on the far side the profile is carried square across the piece. Undefined where the
 * chamber is not open to it.
 */
export function sectionAt(
  { chamber, row, from, to }: RoutedChamber,
  joint: string,
  { layup }: Published,
): Pair[] | undefined {
  if (row.face.joint === joint) return [...chamber.profile];
  if (row.through?.joint !== joint) return undefined;
  const line = layup.joints.find(({ id }) => id === joint)!;
  if (Math.min(depthTo(line, row, from), depthTo(line, row, to)) > chamber.depth[1] + NO_WALL) return undefined;
  const stretched = Math.hypot(1, line.slope);
  return chamber.profile.map(([s, z]): Pair => [inPlan(row, s, depthTo(line, row, s))[0] * stretched, z]);
}
