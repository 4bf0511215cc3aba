/**
 * Minimum dressed sizes, dry, of softwood lumber by its nominal size, inches; the widths 7, 9 and 11 are of boards.
 * Source: American Softwood Lumber Standard, Voluntary Product Standard PS 20, sizes of boards and dimension, as
 * transcribed in "Softwood Lumber - Standard Sizes" (engineeringtoolbox.com, d_1270); the standard itself was not read.
 */
export const DRESSED_THICKNESS: Readonly<Record<string, number>> = {
  '1': 0.75,
  '1.25': 1,
  '1.5': 1.25,
  '2': 1.5,
  '2.5': 2,
  '3': 2.5,
  '3.5': 3,
  '4': 3.5,
  '4.5': 4,
};
export const DRESSED_WIDTH: Readonly<Record<string, number>> = {
  '2': 1.5,
  '3': 2.5,
  '4': 3.5,
  '5': 4.5,
  '6': 5.5,
  '7': 6.5,
  '8': 7.25,
  '9': 8.25,
  '10': 9.25,
  '11': 10.25,
  '12': 11.25,
  '14': 13.25,
  '16': 15.25,
};

/**
 * Board feet of one piece: thickness and width in inches, nominal where lumber is sold so, times its length in feet
 * over 12, to a hundredth, so that those of several pieces add up as they are written. Source: PS 20, board measure.
 */
export function boardFeet(thickness: number, width: number, feet: number): number {
  return Math.round((100 * countedThickness(thickness) * width * feet) / 12) / 100;
}

/** What is thinner than an inch counts as an inch; inches. Source: PS 20, board measure. */
export const countedThickness = (thickness: number): number => Math.max(1, thickness);
