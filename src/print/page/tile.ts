import type { SheetFormat } from '../tile/format.js';
import type { Run, RunPage } from '../tile/nest.js';
import type { Written } from '../tile/runWords.js';
import type { Seam } from '../tile/seam.js';
import type { SeamWords } from '../tile/seamWords.js';
import type { Use } from '../../sheet/pages.js';
import type { PrintContext } from './leaf.js';

/** A page of a run, ready to be drawn. */
export interface Tile {
  readonly context: PrintContext;
  readonly run: Run;
  readonly written: readonly Written[];
  readonly format: SheetFormat;
  readonly seams: readonly Seam[];
  /** What is printed of each seam. */
  readonly marked: readonly SeamWords[];
  /** Which page of the run it is, from 0, and the windows it carries. */
  readonly index: number;
  readonly laid: RunPage;
  readonly firstSheet: number;
  readonly sheets: number;
  readonly use: Use | undefined;
}
