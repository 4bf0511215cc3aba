/**
 * Heights of the title block and of the test bars in the band under a drawing, mm: side by side where the sheet is wide
 * enough, else stacked.
 */
export const BLOCK_HEIGHT = 27;
export const BARS_HEIGHT = 11;

/** Height of the band under strips, mm: the test bars, and what is said of the page's use over them. */
export const STRIPS_BAND = BARS_HEIGHT + 10;
