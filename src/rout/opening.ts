import { easeCorners } from '../chamber/contour.js';
import type { Vertex } from '../contour/vertex.js';

/** Edges that turn by less, radians, are one straight line but for rounding. */
const STRAIGHT = 1e-6;

type Pair = readonly [number, number];

/**
 * How much larger than the cut a guide's opening is on every side, mm: half of what the bush is wider than the cutter.
 * Source: "Understanding Guide Bushings", WOOD magazine.
 */
export function guideOffset(bush: number, cutterDiameter: number): number {
  return (bush - cutterDiameter) / 2;
}

/**
 * The opening of the guide whose bush makes the cutter leave this cut: its sharp corners moved outward by the offset
 * and eased to the bush's radius, so that the bush reaches into every corner that the cutter is to reach. Frame and
 * order of the cut, mm; undefined when an edge is too short for the bush.
 */
export function openingOf(cut: readonly Vertex[], cutterDiameter: number, bush: number): Vertex[] | undefined {
  const moved = movedOut(sharpCorners(cut), guideOffset(bush, cutterDiameter));
  return easeCorners(moved, bush / 2, STRAIGHT)?.contour;
}

/**
 * The corners of a counter-clockwise contour as they would be without easing: where the straight edges beside each arc
 * meet.
 */
export function sharpCorners(contour: readonly Vertex[]): Pair[] {
  const corners: Pair[] = [];
  contour.forEach(({ x, y, bulge }, i) => {
    const next = contour[(i + 1) % contour.length]!;
    const before = contour[(i + contour.length - 1) % contour.length]!;
    if (bulge) {
      // The tangents at both ends of an arc meet over the middle of its chord, by tan of half of its turn.
      const rise = Math.tan(2 * Math.atan(bulge)) / 2;
      corners.push([(x + next.x) / 2 + rise * (next.y - y), (y + next.y) / 2 - rise * (next.x - x)]);
    } else if (!before.bulge) corners.push([x, y]);
  });
  return corners;
}

/** Every edge of a counter-clockwise polygon moved outward by the same distance. */
function movedOut(corners: readonly Pair[], by: number): Pair[] {
  const n = corners.length;
  const along = corners.map(([x, y], i): Pair => {
    const [x1, y1] = corners[(i + 1) % n]!;
    const length = Math.hypot(x1 - x, y1 - y);
    return [(x1 - x) / length, (y1 - y) / length];
  });
  return corners.map(([x, y], i): Pair => {
    const [ax, ay] = along[(i + n - 1) % n]!;
    const [bx, by_] = along[i]!;
    // Along the bisector of the two outward normals (dy, −dx).
    const share = by / (1 + ax * bx + ay * by_);
    return [x + share * (ay + by_), y - share * (ax + bx)];
  });
}
