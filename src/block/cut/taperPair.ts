import type { Vertex } from '../../contour/vertex.js';
import { partOutline, turnedEndForEnd } from './blank.js';
import type { Blank } from './blank.js';
import type { CutPart } from '../nest/cutPart.js';

/** Partners are sought among this many blocks that are next in length: a longer partner wastes its overhang. */
const NEIGHBOURS = 40;

/**
 * Tapered blocks in pairs, one turned end for end, so that one slanting cut serves both. Only pairs that take less
 * sheet than their two blocks side by side; those that save most first.
 * @param fits - whether a blank of that size can be cut from some sheet
 * @returns the pairs, and the blocks left without a partner
 */
export function pairTapered(
  parts: readonly CutPart[],
  kerf: number,
  fits: (blank: Blank) => boolean,
): { pairs: Blank[]; singles: CutPart[] } {
  const tapered = parts.filter(({ taper }) => taper && (taper.top !== 0 || taper.bottom !== 0));
  tapered.sort((a, b) => a.length - b.length);
  const offers: { first: CutPart; second: CutPart; blank: Blank; saving: number }[] = [];
  tapered.forEach((first, i) => {
    for (const second of tapered.slice(i + 1, i + 1 + NEIGHBOURS)) {
      const blank = closestPair(first, second, kerf);
      const saving = sheetFor(first, kerf) + sheetFor(second, kerf) - sheetFor(blank, kerf);
      if (saving > 0 && fits(blank)) offers.push({ first, second, blank, saving });
    }
  });
  offers.sort((a, b) => b.saving - a.saving);
  const taken = new Set<CutPart>();
  const pairs: Blank[] = [];
  for (const { first, second, blank } of offers) {
    if (taken.has(first) || taken.has(second)) continue;
    taken.add(first).add(second);
    pairs.push(blank);
  }
  return { pairs, singles: parts.filter((part) => !taken.has(part)) };
}

/** The lower of the two ways two blocks lie head to tail: their upper edges together, or their lower ones. */
export function closestPair(first: CutPart, second: CutPart, kerf: number): Blank {
  const tops = stacked(first, partOutline(first), second, turnedEndForEnd(second), kerf);
  const bottoms = stacked(first, turnedEndForEnd(first), second, partOutline(second), kerf);
  return bottoms.height < tops.height ? bottoms : tops;
}

/** One block on another, as low as a straight cut between them allows. Both outlines start on the x axis. */
function stacked(lower: CutPart, below: Vertex[], upper: CutPart, above: Vertex[], kerf: number): Blank {
  const length = Math.max(lower.length, upper.length);
  const edge = lineThrough(...highEdge(below));
  const facing = lineThrough(...lowEdge(above));
  const steepest = Math.max(Math.abs(edge.slope), Math.abs(facing.slope));
  const gap = Math.min(facing.at(0) - edge.at(0), facing.at(length) - edge.at(length));
  // Beside the end of a shorter lower block the upper one would sink below both.
  const lift = Math.max(0, kerf * Math.hypot(1, steepest) - gap);
  const lifted = above.map(({ x, y }) => ({ x, y: y + lift }));
  const middle = (kerf * Math.hypot(1, edge.slope)) / 2;
  return {
    length,
    height: Math.max(...below.map(({ y }) => y), ...lifted.map(({ y }) => y)),
    mayTurn: lower.mayTurn && upper.mayTurn,
    parts: [
      { part: lower, outline: below },
      { part: upper, outline: lifted },
    ],
    split: {
      from: { x: 0, y: edge.at(0) + middle },
      to: { x: length, y: edge.at(length) + middle },
      angle: Math.atan(edge.slope),
    },
  };
}

/** The first two corners of an outline are its lower edge, or its upper one where it lies end for end. */
function lowEdge(outline: Vertex[]): [Vertex, Vertex] {
  return isEndForEnd(outline) ? [outline[2]!, outline[3]!] : [outline[0]!, outline[1]!];
}

function highEdge(outline: Vertex[]): [Vertex, Vertex] {
  return isEndForEnd(outline) ? [outline[0]!, outline[1]!] : [outline[2]!, outline[3]!];
}

function isEndForEnd(outline: Vertex[]): boolean {
  return outline[0]!.x > outline[1]!.x;
}

function lineThrough(a: Vertex, b: Vertex): { slope: number; at: (x: number) => number } {
  const slope = (b.y - a.y) / (b.x - a.x);
  return { slope, at: (x) => a.y + slope * (x - a.x) };
}

function sheetFor({ length, height }: { length: number; height: number }, kerf: number): number {
  return (length + kerf) * (height + kerf);
}
