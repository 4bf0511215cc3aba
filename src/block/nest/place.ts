import { ROUNDING, SAME_SIZE } from './cutPart.js';
import { OPEN } from './region.js';
import type { Region } from './region.js';

/** What is to be placed; sizes with one saw cut added, mm. */
export interface BlankKind {
  readonly length: number;
  readonly height: number;
  readonly mayTurn: boolean;
}

/** Where a blank can be cut: from which piece, which way round, and how the piece is cut for it. */
export interface CutPlace {
  readonly region: Region;
  readonly turned: boolean;
  readonly cut: 'fits' | 'strip' | 'rest';
}

/** What decides how good a rest is. */
export interface PlaceRules {
  /** The longest chain of cuts. */
  readonly stages: number;
  /** The shortest side of any blank: a rest narrower than this is waste. */
  readonly shortest: number;
}

/** A rest that only a blank of exactly its width can use counts this share of one that anything narrower can use. */
const EXACT_ONLY = 0.25;

/**
 * The place that spoils least of what is free, or `undefined` where the blank fits nowhere. A large rest is worth more
 * than two halves of it, so blanks go where they fit tightly.
 * @param blink - a draw from 0..1; a place is overlooked where it is below `overlooked`, which keeps a search moving
 */
export function bestPlace(
  sheets: readonly Region[],
  blank: BlankKind,
  rules: PlaceRules,
  blink: () => number,
  overlooked: number,
): CutPlace | undefined {
  let best: CutPlace | undefined;
  let least = Infinity;
  const thinnest = Math.min(blank.length, blank.height) - ROUNDING;

  function offer(region: Region, turned: boolean): void {
    const lengthAlong = (region.axis === 0) !== turned;
    const take = lengthAlong ? blank.length : blank.height;
    const across = lengthAlong ? blank.height : blank.length;
    const slack = region.across - across;
    const rest = region.free - take;
    if (slack < -ROUNDING || rest < -ROUNDING) return;
    const before = worth(region.free, region.across, region.level, rules);
    if (slack <= SAME_SIZE) {
      consider(region, turned, 'fits', before - worth(rest, region.across, region.level, rules));
      return;
    }
    if (region.level + 2 > rules.stages) return;
    const beside = worth(rest, region.across, region.level, rules);
    consider(region, turned, 'strip', before - beside - worth(slack, take, region.level + 1, rules));
    if (rest <= SAME_SIZE || region.level + 3 > rules.stages) return;
    const above = worth(slack, region.free, region.level + 1, rules);
    consider(region, turned, 'rest', before - above - worth(rest, across, region.level + 2, rules));
  }

  function consider(region: Region, turned: boolean, cut: CutPlace['cut'], loss: number): void {
    if (loss >= least || (overlooked > 0 && blink() < overlooked)) return;
    least = loss;
    best = { region, turned, cut };
  }

  function scan(region: Region): void {
    if (region.level < rules.stages && region.free >= thinnest) {
      offer(region, false);
      if (blank.mayTurn) offer(region, true);
    }
    if (region.level + 1 >= rules.stages) return;
    for (const child of region.children) if (child.kind === OPEN && child.across >= thinnest) scan(child);
  }

  for (const sheet of sheets) scan(sheet);
  return best;
}

/** Cuts the blank out at a place found by `bestPlace`. */
export function putAt(place: CutPlace, kind: number, blank: BlankKind): void {
  const { region, turned, cut } = place;
  const lengthAlong = (region.axis === 0) !== turned;
  const take = lengthAlong ? blank.length : blank.height;
  const across = lengthAlong ? blank.height : blank.length;
  const inner = region.axis === 0 ? 1 : 0;
  if (cut === 'fits') {
    region.children.push(cutOut(kind, turned, region, take));
    region.free -= take;
    return;
  }
  const width = cut === 'strip' ? take : region.free;
  const strip = openPiece(inner, region.level + 1, region.across, width);
  region.children.push(strip);
  region.free -= width;
  if (cut === 'strip') {
    strip.children.push(cutOut(kind, turned, strip, across));
  } else {
    const cell = openPiece(region.axis, region.level + 2, width, across);
    cell.children.push(cutOut(kind, turned, cell, take));
    cell.free -= take;
    strip.children.push(cell);
  }
  strip.free -= across;
}

/** What a rest is worth to later blanks: a number to compare, no price. */
export function worth(along: number, across: number, level: number, rules: PlaceRules): number {
  if (along < rules.shortest || across < rules.shortest || level >= rules.stages) return 0;
  const area = along * across;
  return moreThanSplit(area) * (level + 1 === rules.stages ? EXACT_ONLY : 1);
}

/** Area to the power 1¼: one large rest is worth more than two halves of it. */
export function moreThanSplit(area: number): number {
  return area * Math.sqrt(Math.sqrt(area));
}

export function openPiece(axis: 0 | 1, level: number, room: number, across: number): Region {
  return { kind: OPEN, turned: false, axis, level, extent: room, across, free: room, children: [] };
}

export function cutOut(kind: number, turned: boolean, parent: Region, across: number): Region {
  const axis = parent.axis === 0 ? 1 : 0;
  return { kind, turned, axis, level: parent.level + 1, extent: parent.across, across, free: 0, children: [] };
}
