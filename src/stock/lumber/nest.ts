import { leastWidth } from '../../contour/leastWidth.js';
import type { Point } from '../../contour/point.js';
import { envelopeOf, standOff, STEP, type Envelope } from './envelope.js';

/** A part to be sawn from a plank: a profile, or a piece of one between two scarfs. */
export interface Part {
  readonly name: string;
  /** Side view, closed and counter-clockwise, mm. */
  readonly outline: readonly Point[];
  readonly thickness: number;
  /** From where to where along the profile, from the nose tip, mm; absent where it is the whole. */
  readonly along?: readonly [from: number, to: number];
}

/** A part laid on its narrowest straight board: turned to best advantage, from (0, 0) along and across. */
export interface LaidPart {
  readonly part: Part;
  readonly outline: readonly Point[];
  readonly length: number;
  readonly width: number;
  readonly envelope: Envelope;
}

export function laidPart(part: Part): LaidPart {
  const { angle } = leastWidth(part.outline);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turned = part.outline.map(([s, z]): Point => [s * cos + z * sin, z * cos - s * sin]);
  const from: Point = [Math.min(...turned.map(([s]) => s)), Math.min(...turned.map(([, z]) => z))];
  const outline = turned.map(([s, z]): Point => [s - from[0], z - from[1]]);
  return {
    part,
    outline,
    length: Math.max(...outline.map(([s]) => s)),
    width: Math.max(...outline.map(([, z]) => z)),
    envelope: envelopeOf(outline),
  };
}

/** Where a part lies on a plank: moved so far along and across. */
export interface Placed {
  readonly laid: LaidPart;
  readonly at: Point;
}

/**
 * Lays parts in one plank, one into the hollow of the other where that is narrower, each as far down as it goes. Gives
 * what fits, in the order given; parts that do not fit are passed over.
 */
export function nested(parts: readonly LaidPart[], length: number, width: number, kerf: number): Placed[] {
  const placed: Placed[] = [];
  for (const laid of parts) {
    const at = lowestPlace(placed, laid, length, kerf);
    if (at && at[1] + laid.width <= width + ROUNDING) placed.push({ laid, at });
  }
  return placed;
}

/** What arithmetic leaves, mm. */
const ROUNDING = 1e-6;
/** Places along the plank that are tried. */
const TRIES = 24;

function lowestPlace(placed: readonly Placed[], laid: LaidPart, length: number, kerf: number): Point | undefined {
  const slack = Math.floor((length + ROUNDING - laid.length) / STEP);
  if (slack < 0) return undefined;
  let best: Point | undefined;
  const tries = Math.min(TRIES, slack);
  for (let i = 0; i <= tries; i++) {
    const shift = tries === 0 ? 0 : Math.round((slack * i) / tries);
    let up = 0;
    for (const other of placed) {
      const off = standOff(other.laid.envelope, laid.envelope, shift - Math.round(other.at[0] / STEP), kerf);
      up = Math.max(up, other.at[1] + off);
    }
    if (!best || up < best[1] - ROUNDING) best = [shift * STEP, up];
  }
  return best;
}
