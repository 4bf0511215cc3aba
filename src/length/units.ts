/** The two ways a shop measures. Which one a job is in decides what a bare number means and how papers print. */
export type Units = 'mm' | 'in';

/** Millimetres in an inch, exact: international yard and pound agreement of 1959 (from memory). */
export const MM_PER_INCH = 25.4;
export const MM_PER_FOOT = 12 * MM_PER_INCH;

/** Kilograms in a pound avoirdupois, exact: same agreement. */
export const KG_PER_POUND = 0.45359237;
export const KG_PER_OUNCE = KG_PER_POUND / 16;

/** Cubic metres in a cubic foot, exact. */
export const M3_PER_CUBIC_FOOT = (MM_PER_FOOT / 1000) ** 3;
