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
  /** What is cut of the row, and what is left of each. */
  readonly cut: readonly (readonly [StandingPart, readonly StandingPart[]])[];
  /** The chamber swallows it: it keeps off nothing. */
  readonly swallowed: boolean;
  /** Where the row must keep off, when not only around the dot: to the end of a chamber that may not be split. */
  readonly keepOff: readonly [from: number, to: number];
}

export type PriceRules = Pick<DotSpec, 'may' | 'clearance'> & Pick<ChamberSpec, 'web' | 'smallest'>;

/**
 * The least that a dot with its middle at `s`, `z` of the joint costs the row; undefined when nothing that is allowed
 * makes room for it.
 */
export function priceOf(
  at: JointOnRow,
  [s, z]: Point,
  radius: number,
  standing: readonly StandingPart[],
  rules: PriceRules,
): Price | undefined {
  const off = radius + rules.clearance;
  const middle = acrossRow(at, s).s;
  const [from, to] = [middle - off, middle + off];
  const beyond = openBeyond(at, s - off, s + off, rules.clearance);
  const cut: [StandingPart, readonly StandingPart[]][] = [];
  const price = { lost: 0, cut, swallowed: false, keepOff: [from, to] as [number, number] };
  for (const part of standing) {
    if (part.from >= to || part.to <= from || part.chamber.depth[1] <= beyond) continue;
    const comesOut = isOpenAt(at, part.chamber.depth[1], s - radius, s + radius);
    if (rules.may.includes('swallow') && comesOut && swallows(part, [(from + to) / 2, z], off)) {
      price.swallowed = true;
      continue;
    }
    const left = cutOf(part, from, to, rules);
    if (!left) return undefined;
    cut.push([part, left.parts]);
    price.lost += left.lost;
    price.keepOff[0] = Math.min(price.keepOff[0], left.from);
    price.keepOff[1] = Math.max(price.keepOff[1], left.to);
  }
  return price;
}

/** What stands of a row once a dot is taken at its price. */
export function standingAfter(standing: readonly StandingPart[], { cut }: Price): StandingPart[] {
  const left = new Map(cut);
  return standing.flatMap((part) => left.get(part) ?? [part]);
}

/** Whether the chamber holds a dot with its clearance wholly inside what stands of it. */
function swallows({ chamber, from, to }: StandingPart, middle: Point, off: number): boolean {
  if (middle[0] - off < from || middle[0] + off > to) return false;
  const { gap, inside } = gapTo(chamber.profile, { from: middle, to: middle });
  return inside && gap >= off;
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

function lostOf(part: StandingPart, left: readonly StandingPart[]): number {
  return Math.round(left.reduce((rest, { volume }) => rest - volume, part.volume));
}

/** A stretch of a chamber and what it holds. */
function partOf(chamber: DrawnChamber, from: number, to: number): StandingPart {
  const { profile, depth } = chamber;
  return { chamber, from, to, volume: areaInStrip(profile, from, to) * (depth[1] - depth[0]) };
}
