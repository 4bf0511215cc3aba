import type { Chamber } from '../../chamber/chamber.js';
import { stretchOf, type Stretch } from '../../chamber/stretch.js';
import type { Point } from '../../contour/point.js';
import { sharpCorners } from '../../contour/sharp.js';
import type { Vertex } from '../../contour/vertex.js';

/** Where the lines of a chamber meet, its corners as they were before easing. Face frame, `[s, z]`, mm. */
export interface ChamberEnds {
  /** Its upper and its lower line, nose to tail: the corners of both ends with every bend between. */
  readonly upper: readonly Point[];
  readonly lower: readonly Point[];
}

/**
 * The long lines of a chamber, from the end toward the nose to the end toward the tail. An end is the line that rises
 * or falls steepest; it may lean.
 *
 * @param contour counter-clockwise
 */
export function chamberEnds(contour: readonly Vertex[]): ChamberEnds {
  const corners = sharpCorners(contour);
  const next = (i: number) => (i + 1) % corners.length;
  const steepness = corners.map(([s, z], i) => {
    const [s1, z1] = corners[next(i)]!;
    return (z1 - z) / (Math.hypot(s1 - s, z1 - z) || 1);
  });
  const tail = steepness.indexOf(Math.max(...steepness));
  const nose = steepness.indexOf(Math.min(...steepness));
  const along = (first: number, last: number): Point[] => {
    const points = [corners[first]!];
    for (let i = first; i !== last;) points.push(corners[(i = next(i))]!);
    return points;
  };
  return { upper: along(next(tail), nose).reverse(), lower: along(next(nose), tail) };
}

/** From where to where a chamber reaches along its face: what is said of its ends. */
export const reachOf = ({ contour }: Chamber): Stretch => stretchOf(contour.map(({ x, y }) => [x, y]));
