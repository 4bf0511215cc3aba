import type { Drawing } from '../sheet/drawing.js';
import type { DocumentPage } from '../sheet/pages.js';
import type { PaperKind } from '../sheet/uses.js';

/** One paper of the set; its drawings and pages are made when they are asked for. */
export interface Paper {
  /** What a builder calls it by to print it alone: `pole`, `face-R2`. */
  readonly name: string;
  /** What else asks for it: the row that its sheet serves when it is turned over. */
  readonly also?: string;
  /** What it is for, and when it is valid: several papers may be of one kind. */
  readonly kind: PaperKind;
  /** What of it is marked or cut from at true size. Papers of one kind share runs of pages where they fit. */
  readonly fullSize?: () => readonly Drawing[];
  /** Its other pages, printed after those at full size; a cover tells of the whole set. */
  readonly pages: (wholeSet: SortedPapers) => readonly DocumentPage[];
  /** Where it goes unless it is asked for by name. */
  readonly goes: 'to print' | 'to look at' | 'on request';
}

/** Papers by where they go: to the printer, to a file that is only looked at, or nowhere unless asked for. */
export interface SortedPapers {
  readonly toPrint: readonly Paper[];
  readonly toLookAt: readonly Paper[];
  readonly leftOut: readonly Paper[];
}
