import { placed, unplaced, type Placement } from './placement.js';

/**
 * How a strip of foam is moved on the bench against the others before it is glued to them, mm: so far toward the tail;
 * raised so far all along; and raised so much more at the board's nose tip, evenly less from there to its tail. Minus:
 * toward the nose, lowered. Board frame.
 */
export interface Slid {
  readonly along: number;
  readonly up: number;
  readonly noseUp: number;
}

export const NOT_SLID: Slid = { along: 0, up: 0, noseUp: 0 };

/**
 * How the board lies in a strip that is slid: the strip moves and the board stays, so that it lies lower in a strip
 * that is raised, and nearer to the nose end of one that is slid toward the tail.
 *
 * @param others how the board lies in the strips that are not slid
 * @param length the board's, mm
 */
export function lyingIn(others: Placement, slid: Slid, length: number): Placement {
  const [x, z] = placed(others, length)(...unplaced(aboutMiddle(slid), length)(length / 2, 0));
  return { along: x - length / 2, up: z, noseUp: turnedBy(others.noseUp, -slid.noseUp, length) };
}

/** The way back: how a strip is slid in which the board lies so, against others in which it lies otherwise. */
export function slidAgainst(others: Placement, own: Placement, length: number): Slid {
  const [x, z] = unplaced(own, length)(...placed(others, length)(length / 2, 0));
  const noseUp = turnedBy(others.noseUp, -own.noseUp, length);
  return { along: x - length / 2, up: z - noseUp / 2, noseUp };
}

function aboutMiddle({ along, up, noseUp }: Slid): Placement {
  return { along, up: up + noseUp / 2, noseUp };
}

/** What the nose is raised by two turns after each other, each as in `Placement`. */
const turnedBy = (one: number, other: number, length: number) =>
  length * Math.sin(Math.asin(one / length) + Math.asin(other / length));
