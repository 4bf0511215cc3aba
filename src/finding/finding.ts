/** Where in what a builder wrote something was found. Lines and columns count from 1. */
export interface Place {
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  /** The key, as in `chambers.web` or `board.stations[2].thick`; nothing where it is the whole. */
  readonly path: string;
}

/**
 * Something that a builder must act on: where, what, and what to do about it. A value, not an exception; every room
 * gives this one kind.
 *
 * @typeParam Where what it is called by (a paper, an option, a file), or its place in what a builder wrote
 */
export interface Finding<Where extends string | Place = string> {
  readonly where: Where;
  readonly what: string;
  readonly remedy: string;
}
