import { momentsOf } from '../contour/area.js';
import { perimeter } from '../contour/perimeter.js';
import { spreadAlong } from '../contour/spread.js';
import { straight } from '../contour/straight.js';
import type { Chamber } from '../chamber/chamber.js';
import { goesThrough } from '../chamber/through.js';
import { depthOf, toBoard } from '../layup/frame.js';
import type { LaidMember, Layup, Row } from '../layup/layup.js';
import { type Moments, sumOf } from './moments.js';

/** What one chamber takes out of the board, and the faces inside it that get glue when its block goes in. */
export interface ChamberCut {
  readonly id: string;
  /** What is taken out of each member it runs through, litres. */
  readonly members: readonly { readonly member: LaidMember; readonly moments: Moments }[];
  /** The chamber as a whole, litres. */
  readonly whole: Moments;
  /** The walls of the chamber and, where it does not run right through, its end, m². */
  readonly walls: number;
}

export function cutsOf(chambers: readonly Chamber[], { rows }: Layup): ChamberCut[] {
  const byId = new Map(rows.map((row) => [row.id, row]));
  return chambers.map((chamber) => cutOf(chamber, byId.get(chamber.row)!));
}

/**
 * A joint lies at a depth that changes evenly along the chamber, so each member's share is the profile times its
 * thickness at the profile's centre of area: exact where no joint runs out of the chamber's end.
 */
function cutOf({ id, contour, profile, depth }: Chamber, row: Row): ChamberCut {
  const { area, x: s } = momentsOf(contour);
  const spread = spreadAlong(profile);
  const members = row.members.map((member) => {
    const [from, to] = within(depth, depthsOf(member, row, s));
    return { member, moments: slab(row, area, s, spread, from, to) };
  });
  const whole = sumOf(members.map(({ moments }) => moments));
  const deep = (whole.amount * 1e6) / area;
  const walls = perimeter(straight(profile)) * deep + (goesThrough({ profile, depth }, row) ? 0 : area);
  return { id, members, whole, walls: walls / 1e6 };
}

/** The profile between two depths, litres. `spread` is its mean square length about its centre, mm². */
function slab({ face }: Row, area: number, s: number, spread: number, from: number, to: number): Moments {
  const amount = (area * (to - from)) / 1e6;
  const [x, y] = toBoard(face, s, 0, (from + to) / 2);
  const through = (to - from) ** 2 / 12;
  return {
    amount,
    x: amount * x,
    xx: amount * (x * x + spread * face.along[0] ** 2 + through * face.inward[0] ** 2),
    yy: amount * (y * y + spread * face.along[1] ** 2 + through * face.inward[1] ** 2),
  };
}

/** From where to where a member lies behind the row's face at `s`. */
export function depthsOf(member: LaidMember, { face }: Row, s: number): [number, number] {
  const ends = [member.left, member.right].map((joint) => {
    if (!joint) return Infinity;
    const { at, slope } = depthOf(face, joint);
    return at + slope * s;
  });
  return [Math.min(...ends), Math.max(...ends)];
}

/** The part of `a` that lies in `b`. */
export function within(a: readonly [number, number], b: readonly [number, number]): [number, number] {
  const from = Math.max(a[0], b[0]);
  return [from, Math.max(from, Math.min(a[1], b[1]))];
}
