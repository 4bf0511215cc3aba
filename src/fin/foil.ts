/**
 * Half the thickness of the four-digit symmetric form, as a share of the greatest thickness, at `x`, a share of the
 * chord from the leading edge. The trailing edge keeps a hundredth of the thickness on each side, as published.
 *
 * Source: E. N. Jacobs, K. E. Ward, R. M. Pinkerton, NACA Report 460 (1933), p. 4; as in C. L. Ladson, C. W. Brooks,
 * A. S. Hill, D. W. Sproles, NASA TM 4741 (1996).
 */
export function halfThickness(x: number): number {
  return 5 * (0.2969 * Math.sqrt(x) - 0.126 * x - 0.3516 * x ** 2 + 0.2843 * x ** 3 - 0.1015 * x ** 4);
}

/** The greatest half thickness lies here, a share of the chord. NACA Report 460, p. 4. */
export const THICKEST = 0.3;
