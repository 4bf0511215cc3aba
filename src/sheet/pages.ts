import type { Drawing } from './drawing.js';

/** All papers of one job, in the order in which they are printed. Plain data: `print` turns it into pages. */
export interface PaperSet {
  readonly mark: JobMark;
  readonly pages: readonly DocumentPage[];
}

/**
 * What stands in every title block (the fields of ISO 7200:2004). Absent fields stay blank, to be filled in by hand.
 */
export interface JobMark {
  readonly job: string;
  /** Which state of the job this is; two characters or so. */
  readonly revision?: string;
  readonly owner?: string;
  readonly creator?: string;
  readonly approved?: string;
}

/**
 * One document of the set. `title` is its bookmark and its line in the contents.
 *
 * - `tiled`: drawings at full size, laid on as few sheets as possible
 * - `figure`: a drawing made smaller to fit one page, at a scale of ISO 5455
 * - `table`: a list, its header on each page, boxes to tick, totals
 * - `text`: headings, paragraphs, lists, cautions, small tables
 * - `labels`: a grid of labels on label stock
 * - `check`: the sheet to print alone first, with the bars that calibrate the printer
 * - `contents`, `map`: made from the set itself
 */
export type DocumentPage =
  TiledPage | FigurePage | TablePage | TextPage | LabelsPage | CheckPage | ContentsPage | MapPage;

interface Page {
  readonly title: string;
  readonly use?: Use;
  /** The kind of paper that it is a page of. */
  readonly of?: string;
}

/** What stands on every page of a document: whether its size matters, and at which point of the work it is valid. */
export interface Use {
  readonly size: string;
  readonly when: string;
}

export interface TiledPage extends Page {
  readonly kind: 'tiled';
  readonly drawings: readonly Drawing[];
}

export interface FigurePage extends Page {
  readonly kind: 'figure';
  readonly drawing: Drawing;
  readonly notes?: readonly string[];
}

export interface TablePage extends Page {
  readonly kind: 'table';
  /** Said above the table on its first page. */
  readonly notes?: readonly string[];
  readonly columns: readonly Column[];
  readonly rows: readonly TableRow[];
}

export interface Column {
  readonly title: string;
  /** `tick` is a box to tick; a cell of `true` prints it ticked. */
  readonly kind: 'text' | 'number' | 'tick';
  /** Number columns only: how a total is written. Given, the column is totalled on each page and at the end. */
  readonly total?: (sum: number) => string;
}

/** A row of a table, or a heading across it that goes with the rows below. */
export type TableRow =
  { readonly kind: 'row'; readonly cells: readonly Cell[] } | { readonly kind: 'heading'; readonly text: string };

/** What stands in a cell. A number that is not written as it is counted comes as `{ value, text }`. */
export type Cell = string | number | boolean | { readonly value: number; readonly text: string };

export interface TextPage extends Page {
  readonly kind: 'text';
  /** Whether it is to take the fewest pages, with smaller letters where that helps. */
  readonly isTight?: boolean;
  readonly blocks: readonly TextBlock[];
}

export type TextBlock =
  | { readonly kind: 'title' | 'heading' | 'paragraph'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly numbered?: boolean }
  /** Set in a frame with the warning sign, so that it cannot be overlooked. */
  | { readonly kind: 'caution'; readonly title: string; readonly lines: readonly string[] }
  | { readonly kind: 'pairs'; readonly pairs: readonly (readonly [string, string])[] }
  /** A small table among text. */
  | ({ readonly kind: 'table' } & Pick<TablePage, 'columns' | 'rows'>)
  /** Documents of the set, each with the pages it takes; `missing` is said of one that the set does not hold. */
  | {
      readonly kind: 'pages';
      /** Over the lines. */
      readonly title?: string;
      readonly entries: readonly PageEntry[];
      readonly missing: string;
      /** Two lines beside each other. */
      readonly isDense?: boolean;
    };

/** A line that leads to a document: what it says, with a word behind it; the document's title, or its kind of paper. */
export interface PageEntry {
  readonly name: string;
  readonly note?: string;
  readonly document: string;
}

export interface LabelsPage extends Page {
  readonly kind: 'labels';
  readonly stock: LabelStock;
  readonly labels: readonly Label[];
}

/** A sheet of labels: a grid, mm from the sheet's upper left corner. */
export interface LabelStock {
  readonly name: string;
  readonly sheet: string;
  readonly columns: number;
  readonly rows: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly columnPitch: number;
  readonly rowPitch: number;
  /** Cut lines, for plain paper. */
  readonly cutLines: boolean;
}

/**
 * A label: its number large, lines of text, a small drawing with words at its left and right `ends`, and a square code
 * as rows of dark (true) and light modules.
 */
export interface Label {
  readonly number: string;
  readonly lines: readonly string[];
  readonly drawing?: Drawing;
  readonly ends?: readonly [left: string, right: string];
  readonly code?: readonly (readonly boolean[])[];
}

export interface CheckPage extends Page {
  readonly kind: 'check';
}

export interface ContentsPage extends Page {
  readonly kind: 'contents';
}

export interface MapPage extends Page {
  readonly kind: 'map';
}

/** A page, upright, mm. */
export interface PageSize {
  readonly width: number;
  readonly height: number;
}
