import type { Point } from '../contour/point.js';
import { support } from '../contour/support.js';
import { sharpCorners } from '../contour/sharp.js';
import type { Vertex } from '../contour/vertex.js';
import type { Taper } from './nest/cutPart.js';

/** How a block's outline lies in the rectangle it is sawn from. */
export interface Sawn {
  /** mm. */
  readonly length: number;
  readonly height: number;
  /** How far the rectangle is turned against the face, counter-clockwise, radians: a block lies level on the saw. */
  readonly turned: number;
  /** Only where the saw alone gives the shape: four straight sides, ends upright. */
  readonly sides?: StraightSides;
}

/** The two long sides of a block with upright ends, against a line square to its ends. */
export interface StraightSides {
  readonly taper: Taper;
  /** What the saw's gauge is set to: positive where a side leans in toward the tail end. */
  readonly topInDegrees: number;
  readonly bottomInDegrees: number;
}

/** Ends whose corners stand less than this beside each other are upright, mm over the height of a block. */
const UPRIGHT = 0.01;
/** A block is turned by less than this to lie level, radians: what is long stays long. */
const MOST_TURN = Math.PI / 4;

/**
 * The rectangle a block is sawn from: upright to its ends where it has four straight sides, so that two more cuts
 * finish it; otherwise the smallest around it, which has one side along an edge of it (Freeman and Shapira 1975,
 * "Determining the minimum-area encasing rectangle for an arbitrary closed curve").
 */
export function sawnFrom(outline: readonly Vertex[]): Sawn {
  const corners = sharpCorners(outline);
  const sides = straightSides(corners);
  if (sides) return { ...box(outline, 0), turned: 0, sides };
  const angles = corners.flatMap(([x, y], i): number[] => {
    const [x1, y1] = corners[(i + 1) % corners.length]!;
    const angle = Math.atan2(y1 - y, x1 - x);
    // Of the two directions of a side, and of one square to it, the one nearest to level.
    return [angle - (Math.PI / 2) * Math.round(angle / (Math.PI / 2))];
  });
  return [0, ...angles]
    .filter((angle) => Math.abs(angle) <= MOST_TURN)
    .map((turned) => ({ ...box(outline, turned), turned }))
    .reduce((best, each) => (each.length * each.height < best.length * best.height - 1e-6 ? each : best));
}

function box(outline: readonly Vertex[], turned: number): { length: number; height: number } {
  const wide = (angle: number) => support(outline, angle) + support(outline, angle + Math.PI);
  return { length: wide(turned), height: wide(turned + Math.PI / 2) };
}

/** The taper of a quadrilateral whose ends are upright; undefined for any other shape. */
function straightSides(corners: readonly Point[]): StraightSides | undefined {
  if (corners.length !== 4) return undefined;
  const [a, b, c, d] = [...corners].sort((p, q) => p[0] - q[0]) as [Point, Point, Point, Point];
  if (b[0] - a[0] > UPRIGHT || d[0] - c[0] > UPRIGHT) return undefined;
  const length = c[0] - a[0];
  const [headLow, headHigh] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
  const [tailLow, tailHigh] = [Math.min(c[1], d[1]), Math.max(c[1], d[1])];
  const taper = { top: headHigh - tailHigh, bottom: tailLow - headLow };
  const inDegrees = (lean: number) => (Math.atan2(lean, length) * 180) / Math.PI;
  return { taper, topInDegrees: inDegrees(taper.top), bottomInDegrees: inDegrees(taper.bottom) };
}
