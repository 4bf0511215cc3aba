import { ROUNDING, SAME_SIZE } from './cutPart.js';
import type { NestProblem, WantedBlank } from './nest.js';
import { cutOut, openPiece } from './place.js';
import type { Region } from './region.js';
import { bestSections, sectionsOf, type Candidate, type Lying, type Section, type SectionTaste } from './section.js';

/** How the strips of one round are put together; drawn anew for each, so that a search does not stand still. */
export interface StripTaste extends SectionTaste {
  /** How much chance mixes into which blank begins a strip, 0..1. */
  readonly seedNoise: number;
  /** How often a strip is begun by a blank that stands upright. */
  readonly upright: number;
  /** How often a strip is as wide as two blanks one above the other. */
  readonly stacked: number;
}

export function anyTaste(draw: () => number): StripTaste {
  return {
    noise: draw() < 0.5 ? 0 : 0.1 * draw(),
    fullness: 3 * draw(),
    offered: 2 + 4 * draw(),
    seedNoise: draw() < 0.5 ? 0 : 0.3 * draw(),
    upright: draw() < 0.5 ? 0 : 0.2 * draw(),
    stacked: draw() < 0.5 ? 0 : 0.5 * draw(),
  };
}

/** The sheet that strips are for, as its first cuts see it: how long each strip is, and how much width there is. */
export interface StripSpace {
  /** Along which direction of the sheet the strips lie side by side, as in `Region`. */
  readonly axis: 0 | 1;
  readonly length: number;
  readonly width: number;
}

/**
 * All blanks in strips, each as full as can be: it is begun by one of the widest blanks left, and the best choice of
 * sections goes into it. The second and third stage of Gilmore and Gomory (1965), each blank there but once.
 * @returns the strips as pieces of a sheet, and what fits none
 */
export function stripsOf(
  kinds: readonly number[],
  problem: NestProblem,
  space: StripSpace,
  taste: StripTaste,
  draw: () => number,
): { strips: Region[]; missing: number[] } {
  const all = kinds.map((kind, i) => ({ i, kind, ways: waysToLie(kind, problem.wanted[kind]!, space) }));
  const missing = all.filter(({ ways }) => ways.length === 0).map(({ kind }) => kind);
  let left: Candidate[] = all.filter(({ ways }) => ways.length > 0);
  const strips: Region[] = [];
  while (left.length > 0) {
    const width = widthOf(left, space, taste, draw);
    const sections = bestSections(sectionsOf(left, width, space.length, taste, draw), width, space.length, taste, draw);
    const taken = new Set(sections.flatMap((each) => each.taken));
    left = left.filter(({ i }) => !taken.has(i));
    strips.push(stripOf(sections.map(({ section }) => section), space)); // prettier-ignore
  }
  return { strips, missing };
}

function waysToLie(kind: number, { length, height, mayTurn }: WantedBlank, space: StripSpace): Lying[] {
  const flat = space.axis === 1 ? [length, height] : [height, length];
  const [along, across] = flat as [number, number];
  const fits = (way: Lying) => way.along <= space.length + ROUNDING && way.across <= space.width + ROUNDING;
  const ways = [{ kind, turned: false, along, across }];
  if (mayTurn && along !== across) ways.push({ kind, turned: true, along: across, across: along });
  return ways.filter(fits).sort((a, b) => a.across - b.across);
}

/** How wide the next strip is: as one of the widest blanks that are left, lying flat unless it must stand. */
function widthOf(left: readonly Candidate[], space: StripSpace, taste: StripTaste, draw: () => number): number {
  let [width, most] = [0, -1];
  for (const { ways } of left) {
    const way = ways[ways.length > 1 && draw() < taste.upright ? 1 : 0]!;
    const rank = way.across * (1 - taste.seedNoise * draw());
    if (rank > most) [most, width] = [rank, way.across];
  }
  if (draw() >= taste.stacked) return width;
  const any = () => left[Math.floor(draw() * left.length)]!;
  const [one, other] = [any(), any()];
  const both = one.ways[0]!.across + other.ways[0]!.across;
  return one !== other && both > width && both <= space.width + ROUNDING ? both : width;
}

function stripOf(sections: readonly Section[], { axis, length }: StripSpace): Region {
  const width = Math.max(...sections.map(({ across }) => across));
  const strip = openPiece(axis === 1 ? 0 : 1, 1, length, width);
  for (const { along, across, blanks } of sections) {
    if (blanks.length === 1 && width - across <= SAME_SIZE) {
      strip.children.push(cutOut(blanks[0]!.kind, blanks[0]!.turned, strip, along));
    } else {
      const cell = openPiece(axis, 2, width, along);
      for (const { kind, turned, across: take } of blanks) cell.children.push(cutOut(kind, turned, cell, take));
      cell.free -= across;
      strip.children.push(cell);
    }
    strip.free -= along;
  }
  return strip;
}
