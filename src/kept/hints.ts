import type { Point } from '../contour/point.js';
import type { Places } from '../wall/walls.js';

/** What an earlier plan on the same surface knew: where a search may begin, and never what it comes to. */
export interface Hints {
  /** Where the walls of the chamber of that name were thinnest. */
  readonly thin: ReadonlyMap<string, Places>;
  readonly margins: readonly KnownMargin[];
}

/** The margin that a dot had in the plane of its joint: another glue-up may have a joint of its name elsewhere. */
export interface KnownMargin {
  readonly plane: string;
  /** `[s, z]`, face frame, mm. */
  readonly at: Point;
  readonly diameter: number;
  readonly margin: number;
}

export const NO_HINTS: Hints = { thin: new Map(), margins: [] };
