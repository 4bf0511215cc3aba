import type { Vertex } from './vertex.js';

/**
 * What of a counter-clockwise contour lies between two places along `x`, mm, its arcs true: the whole contour where all
 * of it does, else an open line that begins and ends where the contour crosses one of them. Of the two the contour
 * crosses at most one, twice, and there with straight lines: `clearOfArcs` says where.
 */
export function partWithin(contour: readonly Vertex[], from: number, to: number): readonly Vertex[] {
  const isIn = ({ x }: Vertex) => x >= from && x <= to;
  const first = contour.findIndex((v, i) => isIn(v) && !isIn(contour.at(i - 1)!));
  if (first < 0) return contour;
  const part: Vertex[] = [crossing(contour.at(first - 1)!, contour[first]!, from, to)];
  for (let i = 0; i < contour.length; i++) {
    const vertex = contour[(first + i) % contour.length]!;
    if (!isIn(vertex)) return [...part, crossing(part.at(-1)!, vertex, from, to)];
    part.push(vertex);
  }
  return part;
}

/** Where a straight line from inside to outside of a stretch, or the other way, leaves it. */
function crossing(a: Vertex, b: Vertex, from: number, to: number): Vertex {
  const x = Math.min(a.x, b.x) < from ? from : to;
  return { x, y: a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y) };
}

/** Kept from an arc, mm. */
const CLEAR = 1;

/** A place along `x`, moved forward (1) or back (-1) until it crosses no arc of a contour, mm. */
export function clearOfArcs(contour: readonly Vertex[], at: number, way: 1 | -1): number {
  const arc = contour.find(({ x, bulge }, i) => {
    const next = contour[(i + 1) % contour.length]!.x;
    return bulge && Math.min(x, next) - CLEAR < at && at < Math.max(x, next) + CLEAR;
  });
  if (!arc) return at;
  const next = contour[(contour.indexOf(arc) + 1) % contour.length]!.x;
  const beyond = way > 0 ? Math.max(arc.x, next) + CLEAR : Math.min(arc.x, next) - CLEAR;
  return clearOfArcs(contour, beyond, way);
}
