import type { Measure, Pen } from '../pen/pen.js';
import type { SheetSettings } from '../tile/format.js';
import type { Paper } from '../paper/paper.js';
import type { PrinterFactors } from '../paper/printer.js';
import type { JobMark } from '../../sheet/pages.js';
import type { TilePlan } from '../tile/nest.js';
import type { Words } from '../../words/printed.js';

/**
 * One page, laid out and not yet drawn. Its size is in true mm; `factors` says how much larger it is drawn for the
 * printer.
 */
export interface Leaf {
  readonly width: number;
  readonly height: number;
  readonly factors: { readonly x: number; readonly y: number };
  /** Begins a document: a bookmark of this name, and a line in the contents. */
  readonly bookmark?: string;
  /** Begins a part of a document: a bookmark, and a line in the contents, under the document's. */
  readonly part?: string;
  draw(pen: Pen, book: Book, page: number): void;
}

/** What the whole set comes to: known when the pages are drawn, after all are laid out. */
export interface Book {
  readonly pages: number;
  readonly entries: readonly Entry[];
  readonly tiled: readonly TiledEntry[];
  readonly documents: readonly CountedDocument[];
  /** The other files of the same run, for what tells pages of theirs. */
  readonly beside?: readonly FileBook[];
}

/** What another file of the same run comes to. */
export interface FileBook {
  readonly name: string;
  readonly book: Book;
}

/** A document of the set, by what it takes. */
export interface CountedDocument {
  /** What kind of paper it is of. */
  readonly of: string;
  readonly pages: number;
  /** What is taped together where its pages join, mm. */
  readonly seams: number;
}

export interface Entry {
  readonly title: string;
  /** From 1. */
  readonly page: number;
  /** The name that links to it. */
  readonly name: string;
  /** 0 a document, 1 a part of the document before. */
  readonly level: 0 | 1;
  /** Whether the size of its sheets matters, in words. */
  readonly size?: string;
  /** The kind of paper that it belongs to. */
  readonly of?: string;
}

export interface TiledEntry {
  readonly title: string;
  readonly plan: TilePlan;
  /** Page number of its first sheet. */
  readonly page: number;
}

/** What every kind of page is laid out with. */
export interface PrintContext {
  readonly mark: JobMark;
  readonly date: Date;
  readonly words: Words;
  readonly measure: Measure;
  /** What full-size drawings go on. */
  readonly paper: Paper;
  /** What lists and notes go on: a sheet that a hand can hold. */
  readonly documents: Paper & { readonly kind: 'sheet' };
  readonly settings: SheetSettings;
  readonly printer: PrinterFactors;
}
