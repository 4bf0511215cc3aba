import type { Chambers } from '../chamber/chambers.js';
import type { Glue } from '../dot/dot.js';
import type { Layup } from '../layup/layup.js';

/** A glue-up with its chambers and its glue: of the whole board, or of its centre and its right side. */
export interface Arrangement {
  /** But for rows shifted so that their webs meet, as laid. */
  readonly layup: Layup;
  /** Carved around the glue. */
  readonly chambers: Chambers;
  readonly glue: Glue;
}
