/** What is wrong with a line, and what would be right. */
export interface Sentence {
  readonly what: string;
  readonly remedy: string;
}

/** Nothing where the line is right. */
export type Said = Sentence | undefined;
