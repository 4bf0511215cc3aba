/**
 * Something that a builder must act on: where, what, and what to do about it. A value, not an exception; every room
 * gives this one kind.
 */
export interface Finding {
  readonly where: string;
  readonly what: string;
  readonly remedy: string;
}

/** In one line, for a terminal or a page: `--date: 2026-02-31 is no day of the calendar → like 2026-05-01`. */
export const sayFinding = ({ where, what, remedy }: Finding): string => `${where}: ${what} → ${remedy}`;
