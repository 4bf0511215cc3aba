/**
 * How thin plates give under a load, within the small deflections for which the theory holds: supported along four
 * edges, free to turn there.
 */

/** A rectangular plate. */
export interface Plate {
  /** Its sides, either first, mm. */
  readonly sides: readonly [number, number];
  /** Against bending, D = E t³ / 12 (1 − ν²), N·mm. */
  readonly stiffness: number;
  /** What it rests on between its edges: pressure for each mm that it gives, N/mm³; 0 where that is nothing. */
  readonly bedding: number;
}

/** Of steel and most of what plates are made of; the published tables are for it. */
export const POISSON = 0.3;

/** Waves across the plate that are summed; shorter ones feel neither the far edges nor a soft bedding. */
const WAVES = 10;
/** Bedding is felt by waves that are longer than the plate's own length on it, (D / k)¹ᐟ⁴: so many of those more. */
const FELT = 2 / Math.PI;

/**
 * How far the middle of a plate gives under 1 N there, mm.
 * Source: Navier's double series for a simply supported plate, S. Timoshenko and S. Woinowsky-Krieger, "Theory of
 * Plates and Shells", 2nd ed. (1959), art. 34, and on an elastic foundation, art. 60, from memory; one of the two sums
 * is closed by Σ 1/(n² + z²) = π tanh(π z/2) / 4z over odd n.
 */
export function givesInTheMiddle({ sides, stiffness, bedding }: Plate): number {
  const [short, long] = sides[0] < sides[1] ? sides : [sides[1], sides[0]];
  const [across, along] = [(Math.PI / short) ** 2, (Math.PI / long) ** 2];
  const root = Math.sqrt(bedding / stiffness);
  const waves = WAVES + Math.ceil(FELT * short * Math.sqrt(root));
  // The short waves: Σ π / 8z³ over the odd numbers from 2 waves + 1 up, all but exactly.
  let sum = ((Math.PI / 8 / (16 * waves ** 2)) * (along / across) ** 1.5) / along ** 2;
  for (let wave = 0; wave < waves; wave++) {
    const real = ((2 * wave + 1) ** 2 * across) / along;
    sum += root === 0 ? unbedded(Math.sqrt(real)) / along ** 2 : bedded(real, root / along) / (along * root);
  }
  return (4 * sum) / (short * long * stiffness);
}

/** Σ 1/(n² + z²)² over odd n. */
function unbedded(z: number): number {
  const half = (Math.PI * z) / 2;
  return (Math.PI / (8 * z ** 3)) * Math.tanh(half) - (Math.PI / (4 * z * Math.cosh(Math.min(half, STEEP)))) ** 2;
}

/** Beyond this a hyperbolic tangent is 1, and 1 over a hyperbolic cosine is 0, to the last digit. */
const STEEP = 40;

/** The imaginary part of Σ 1/(n² + z²) over odd n, where z² = `real` − i `imaginary`. */
function bedded(real: number, imaginary: number): number {
  const size = Math.hypot(real, imaginary);
  const [x, y] = [Math.sqrt((size + real) / 2), -Math.sqrt((size - real) / 2)];
  const [p, q] = [Math.min(Math.PI * x, STEEP), Math.PI * y];
  const below = Math.cosh(p) + Math.cos(q);
  const [tanh, itanh] = [Math.sinh(p) / below, Math.sin(q) / below];
  return (Math.PI / 4) * ((itanh * x - tanh * y) / (x * x + y * y));
}

/**
 * What the middle of a plate is bent by under 1 N on a small circle there, N·mm per mm of width, across its short side.
 * Source: W. C. Young and R. G. Budynas, "Roark's Formulas for Stress and Strain", 7th ed. (2002), table 11.4, case 1b;
 * between the lengths that are listed β runs straight over the inverse of the length.
 *
 * @param radius of the circle, mm
 */
export function bentInTheMiddle(sides: readonly [number, number], radius: number): number {
  const [short, long] = sides[0] < sides[1] ? sides : [sides[1], sides[0]];
  return ((1 + POISSON) * Math.log((2 * short) / (Math.PI * radius)) + betaOf(short / long)) / (4 * Math.PI);
}

/** Short side over long, and β of case 1b. */
export const ROARK_1B: readonly (readonly [shortOverLong: number, beta: number])[] = [
  [0, 1],
  [1 / 2, 0.958],
  [1 / 1.8, 0.927],
  [1 / 1.6, 0.875],
  [1 / 1.4, 0.789],
  [1 / 1.2, 0.65],
  [1, 0.435],
];

function betaOf(shortOverLong: number): number {
  const i = ROARK_1B.findIndex(([to]) => to >= shortOverLong - 1e-12);
  const [to, high] = ROARK_1B[i]!;
  if (i === 0) return high;
  const [from, low] = ROARK_1B[i - 1]!;
  return low + ((high - low) * (shortOverLong - from)) / (to - from);
}
