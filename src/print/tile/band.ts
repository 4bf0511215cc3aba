/**
 * Heights of the title block and of the test bars in the band under a drawing, mm: side by side where the sheet is wide
 * enough, else stacked.
 */
export const BLOCK_HEIGHT = 27;
export const BARS_HEIGHT = 11;
