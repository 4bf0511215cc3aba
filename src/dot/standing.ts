import { inHalfPlane } from '../contour/halfPlane.js';
import { isInside } from '../contour/inside.js';
import type { Point } from '../contour/point.js';
import { areaInStrip } from '../contour/strip.js';
import type { DotSpec } from '../job/spec/dots.js';
import type { ChamberSpec } from '../job/job.js';
import type { DrawnChamber } from '../chamber/row.js';
import { stretchOf } from '../chamber/stretch.js';
import { acrossRow, isOpenAt, openBeyond, type JointOnRow } from '../chamber/onRow.js';
import { gapTo } from './spot.js';

/** What stands of a chamber while dots are being placed: a stretch of its profile, row's frame, mm. */
export interface StandingPart {
  readonly chamber: DrawnChamber;
  readonly from: number;
  readonly to: number;
  /** How low and how high it comes, mm. */
  readonly low: number;
  readonly high: number;
  /** mm³. */
  readonly volume: number;
}

/** What stands in every row, by its name. */
export type Standing = Map<string, readonly StandingPart[]>;

export function standingOf(shapes: readonly DrawnChamber[]): Standing {
  const standing = new Map<string, StandingPart[]>();
  for (const shape of shapes) {
    const { from, to } = stretchOf(shape.profile);
    const parts = standing.get(shape.row) ?? [];
    parts.push(partOf(shape, from, to));
    standing.set(shape.row, parts);
  }
  return standing;
}

/** What a dot would cost one side of its joint, and what would be left standing there. */
export interface Price {
  /** mm³, whole, so that sums of prices compare. */
  readonly lost: number;
  /** Chambers that are parted in two: one more block to cut each. */
  readonly splits: number;
  /** What is cut of the row, and what is left of each. */
  readonly cut: readonly (readonly [StandingPart, readonly StandingPart[]])[];
  /** The chamber swallows it: it keeps off nothing. */
  readonly swallowed: boolean;
  /** Where the row must keep off, when not only around the dot: to the end of a chamber that may not be split. */
  readonly keepOff: readonly [from: number, to: number];
}

export type PriceRules = Pick<DotSpec, 'may' | 'clearance'> & Pick<ChamberSpec, 'web' | 'smallest'>;

/** A dot, told by its middle in the joint's frame, mm. */
export interface Round {
  readonly s: number;
  readonly z: number;
  readonly radius: number;
}

/**
 * What of a row a dot takes with its clearance, frame of the row's face, mm: a stretch along it, from the depth on
 * where a chamber must keep off.
 */
export interface Reach {
  readonly from: number;
  readonly to: number;
  readonly beyond: number;
}

export function reachOf(
  at: JointOnRow,
  { s, radius }: Pick<Round, 's' | 'radius'>,
  { clearance }: Pick<PriceRules, 'clearance'>,
): Reach {
  const off = radius + clearance;
  const middle = acrossRow(at, s).s;
  return { from: middle - off, to: middle + off, beyond: openBeyond(at, s - off, s + off, clearance) };
}

/** Whether a dot of this reach lies beside what stands of a chamber, which comes so deep that it must keep off. */
export function isMet({ from, to, beyond }: Reach, part: StandingPart): boolean {
  return part.from < to && part.to > from && part.chamber.depth[1] > beyond;
}

/** The least that a dot costs the row; undefined when nothing that is allowed makes room for it. */
export function priceOf(
  at: JointOnRow,
  dot: Round,
  standing: readonly StandingPart[],
  rules: PriceRules,
): Price | undefined {
  const { s, z, radius } = dot;
  const off = radius + rules.clearance;
  const reach = reachOf(at, dot, rules);
  const { from, to } = reach;
  const middle = (from + to) / 2;
  const cut: [StandingPart, readonly StandingPart[]][] = [];
  const price = { lost: 0, splits: 0, cut, swallowed: false, keepOff: [from, to] as [number, number] };
  for (const part of standing) {
    if (!isMet(reach, part)) continue;
    const inside = isInside(part.chamber.profile, middle, z);
    if (!inside && keepsOff(part, [middle, z], off)) continue;
    const comesOut = isOpenAt(at, part.chamber.depth[1], s - radius, s + radius);
    const isWhole = inside && from >= part.from && to <= part.to;
    if (rules.may.includes('swallow') && comesOut && isWhole && keepsOff(part, [middle, z], off)) {
      price.swallowed = true;
      continue;
    }
    const around = cutOf(part, from, to, rules);
    const past = rules.may.includes('trim')
      ? pastOf(part, z - off, z + off, around?.lost ?? Infinity, rules)
      : undefined;
    const left = past ?? around;
    if (!left) return undefined;
    cut.push([part, left.parts]);
    price.lost += left.lost;
    price.splits += Math.max(0, left.parts.length - 1);
    // Going under or over it, a chamber keeps off no more than the dot itself, unless it might be parted in two then,
    // drawn anew, though it may not.
    if (!around || (past && rules.may.includes('split'))) continue;
    price.keepOff[0] = Math.min(price.keepOff[0], around.from);
    price.keepOff[1] = Math.max(price.keepOff[1], around.to);
  }
  return price;
}

/** Whether the outline of a chamber lies nowhere nearer to the middle of a dot than so far. */
function keepsOff({ chamber, low, high }: StandingPart, middle: Point, off: number): boolean {
  if (middle[1] - off >= high || middle[1] + off <= low) return true;
  return gapTo(chamber.profile, { from: middle, to: middle }).gap >= off;
}

/** What stands of a row once a dot is taken at its price. */
export function standingAfter(standing: readonly StandingPart[], { cut }: Price): readonly StandingPart[] {
  if (cut.length === 0) return standing;
  return standing.flatMap((part) => cut.find(([whole]) => whole === part)?.[1] ?? [part]);
}

/** What is left of a part when a stretch is taken out of it, as allowed. */
function cutOf(part: StandingPart, from: number, to: number, { may, web, smallest }: PriceRules) {
  const { chamber } = part;
  const holds = (start: number, end: number) => end - start >= smallest.length;
  if (may.includes('split')) {
    const lack = Math.max(0, web - (to - from)) / 2;
    if (holds(part.from, from - lack) && holds(to + lack, part.to)) {
      const parts = [partOf(chamber, part.from, from - lack), partOf(chamber, to + lack, part.to)];
      return { parts, lost: lostOf(part, parts), from, to };
    }
  }
  if (!may.includes('trim')) return undefined;
  const before = holds(part.from, from) ? partOf(chamber, part.from, from) : undefined;
  const behind = holds(to, part.to) ? partOf(chamber, to, part.to) : undefined;
  const kept = before && !(behind && behind.volume > before.volume) ? before : behind;
  const parts = kept ? [kept] : [];
  return {
    parts,
    lost: lostOf(part, parts),
    from: kept && kept === before ? from : Math.min(from, part.from),
    to: kept && kept === before ? Math.max(to, part.to) : to,
  };
}

/**
 * What is left of a part that goes under or over what is blocked from `low` to `high`, where that loses less than going
 * around it: drawn like that it is, too.
 */
function pastOf(part: StandingPart, low: number, high: number, around: number, { smallest }: PriceRules) {
  const { chamber } = part;
  const deep = chamber.depth[1] - chamber.depth[0];
  let best: { parts: StandingPart[]; lost: number } | undefined;
  for (const [up, line, rest] of [
    [1, low, low - part.low],
    [-1, -high, part.high - high],
  ] as const) {
    const most = rest * (part.to - part.from) * deep;
    if (rest < smallest.height || part.volume - most >= (best?.lost ?? around)) continue;
    const profile = inHalfPlane(chamber.profile, [0, up], line);
    const parts = [partOf({ ...chamber, profile }, part.from, part.to)];
    const lost = lostOf(part, parts);
    if (lost < (best?.lost ?? around)) best = { parts, lost };
  }
  return best;
}

function lostOf(part: StandingPart, left: readonly StandingPart[]): number {
  return Math.round(left.reduce((rest, { volume }) => rest - volume, part.volume));
}

/** A stretch of a chamber and what it holds. */
function partOf(chamber: DrawnChamber, from: number, to: number): StandingPart {
  const { profile, depth } = chamber;
  let [low, high] = [Infinity, -Infinity];
  for (const [, z] of profile) {
    low = Math.min(low, z);
    high = Math.max(high, z);
  }
  return { chamber, from, to, low, high, volume: areaInStrip(profile, from, to) * (depth[1] - depth[0]) };
}
