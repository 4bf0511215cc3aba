import { ROUNDING, SAME_SIZE } from './cutPart.js';
import { mostValuable } from './knapsack.js';

/** A blank that may go into a strip: what it takes along it and across it. */
export interface Lying {
  readonly kind: number;
  readonly turned: boolean;
  readonly along: number;
  readonly across: number;
}

/** Blanks of one length stacked across the strip. */
export interface Section {
  readonly along: number;
  readonly across: number;
  readonly blanks: readonly Lying[];
}

/** A blank that is left, and how it may lie: the way that takes least of the width first. */
export interface Candidate {
  readonly i: number;
  readonly ways: readonly Lying[];
}

/** A section, and which candidates are in it. */
export interface Offered {
  readonly section: Section;
  readonly taken: readonly number[];
}

/** How sections are chosen. */
export interface SectionTaste {
  /** How much chance mixes into what a section is worth, 0..1. */
  readonly noise: number;
  /** How much dearer a section is that fills the strip's width than one that does not: an exponent. */
  readonly fullness: number;
  /** Sections offered to a strip, in lengths of it: the fullest. */
  readonly offered: number;
}

/** How often a blank that may lie either way takes the less obvious of them. */
const ODD = 0.15;

/** All sections that a strip may be cut into: blanks of one length, stacked as high as the strip allows. */
export function sectionsOf(
  left: readonly Candidate[],
  width: number,
  length: number,
  taste: SectionTaste,
  draw: () => number,
): Offered[] {
  const lying = left.flatMap(({ i, ways }) => {
    const fitting = ways.filter(({ across }) => across <= width + ROUNDING);
    if (fitting.length === 0) return [];
    // The last is the one that leaves least across.
    const odd = fitting.length > 1 && draw() < ODD;
    return [{ i, way: fitting[odd ? 0 : fitting.length - 1]! }];
  });
  lying.sort((a, b) => b.way.along - a.way.along || b.way.across - a.way.across || a.i - b.i);
  const offered: Offered[] = [];
  // Where there are many lengths, a few of each are more than a strip will be offered.
  const lengths = new Set(lying.map(({ way }) => way.along)).size;
  const share = (taste.offered * length) / lengths;
  for (let at = 0; at < lying.length;) {
    const { along } = lying[at]!.way;
    let end = at + 1;
    while (end < lying.length && along - lying[end]!.way.along <= SAME_SIZE) end++;
    let same = lying.slice(at, end).sort((a, b) => b.way.across - a.way.across || a.i - b.i);
    at = end;
    const most = Math.min(Math.floor((length + ROUNDING) / along), 1 + Math.ceil(share / along));
    for (let n = 0; n < most && same.length > 0; n++) {
      const chosen = new Set(stacked(same.map(({ way }) => way.across), width)); // prettier-ignore
      const blanks = same.filter((_, i) => chosen.has(i));
      same = same.filter((_, i) => !chosen.has(i));
      const across = blanks.reduce((sum, { way }) => sum + way.across, 0);
      offered.push({
        section: { along, across, blanks: blanks.map(({ way }) => way) },
        taken: blanks.map(({ i }) => i),
      });
    }
  }
  return offered;
}

/** Of more blanks of one length than this only so many are stacked at a time, the highest. */
const MOST_STACKED = 16;
/** A stack is a few blanks high: so many heights are told apart. */
const STACK_STEPS = 256;
/** Lengths of sections along a strip. */
const STRIP_STEPS = 1024;

function stacked(across: readonly number[], width: number): number[] {
  if (across.length === 1) return [0];
  return mostValuable(
    across.slice(0, MOST_STACKED).map((size) => ({ size, value: size })),
    width,
    STACK_STEPS,
  );
}

/** The choice of sections that fills a strip best. */
export function bestSections(
  offered: readonly Offered[],
  width: number,
  length: number,
  taste: SectionTaste,
  draw: () => number,
): Offered[] {
  const fullest = [...offered].sort((a, b) => b.section.across - a.section.across);
  let room = taste.offered * length;
  const items = fullest
    .filter(({ section }) => (room -= section.along) + section.along > 0)
    .map((each) => {
      const { along, across } = each.section;
      const worth = along * across * (across / width) ** taste.fullness * (1 + taste.noise * draw());
      return { each, size: along, value: worth };
    });
  const chosen = new Set(mostValuable(items, length, STRIP_STEPS));
  return items.filter((_, i) => chosen.has(i)).map(({ each }) => each);
}
