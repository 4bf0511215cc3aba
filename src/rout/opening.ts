import { easeCorners } from '../contour/ease.js';
import { movedEdges } from '../contour/offset.js';
import { sharpCorners } from '../contour/sharp.js';
import type { Vertex } from '../contour/vertex.js';

/** Edges that turn by less, radians, are one straight line but for rounding. */
const STRAIGHT = 1e-6;

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
  const moved = movedEdges(sharpCorners(cut), guideOffset(bush, cutterDiameter));
  return easeCorners(moved, bush / 2, STRAIGHT)?.contour;
}
