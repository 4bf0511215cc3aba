/** Where and when a button was touched, and for which block. */
export interface Tap {
  readonly block: string;
  /** The event's own time, ms. */
  readonly at: number;
  /** On the screen, px; both 0 where no finger was there (a key). */
  readonly x: number;
  readonly y: number;
}

/** A second touch within this is the same press of a shaking or gloved hand, ms. Common practice, no source. */
const DOUBLE = 700;
/** And it falls this near to the first, px: a list may have moved under it. */
const NEAR = 48;

/** Whether a touch is the second of a double one: the same block again, or the same spot. */
export function isSecondTouch(tap: Tap, last: Tap | undefined): boolean {
  if (!last || tap.at - last.at >= DOUBLE || tap.at < last.at) return false;
  const touched = (last.x !== 0 || last.y !== 0) && (tap.x !== 0 || tap.y !== 0);
  return tap.block === last.block || (touched && Math.hypot(tap.x - last.x, tap.y - last.y) <= NEAR);
}
