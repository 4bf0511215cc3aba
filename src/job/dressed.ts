/**
 * Minimum dressed sizes, dry, of softwood lumber by its nominal size, inches.
 * Source: American Softwood Lumber Standard, Voluntary Product Standard PS 20, sizes of boards and dimension, by memory
 * and a published chart of lumber sizes.
 */
export const DRESSED_THICKNESS: Readonly<Record<string, number>> = {
  '1': 0.75,
  '1.25': 1,
  '1.5': 1.25,
  '2': 1.5,
  '2.5': 2,
  '3': 2.5,
  '4': 3.5,
};
export const DRESSED_WIDTH: Readonly<Record<string, number>> = {
  '2': 1.5,
  '3': 2.5,
  '4': 3.5,
  '5': 4.5,
  '6': 5.5,
  '8': 7.25,
  '10': 9.25,
  '12': 11.25,
  '14': 13.25,
  '16': 15.25,
};

/**
 * Board feet of one piece: thickness and width in inches, nominal where lumber is sold so, times its length in feet
 * over 12; what is thinner than an inch counts as an inch. Source: PS 20, board measure.
 */
export function boardFeet(thickness: number, width: number, feet: number): number {
  return (Math.max(1, thickness) * width * feet) / 12;
}
