/** A value that lies far from the curve through its neighbours. */
export interface Outlier {
  /** Which of the values. */
  readonly index: number;
  /** What its neighbours would have there. */
  readonly expected: number;
}

/** How far off a value may be, as a share of the largest other value, before it is told. */
export interface Bearing {
  /** With two neighbours on either side. */
  readonly inside: number;
  /** Next to an end. */
  readonly next: number;
  /** At an end, where the curve is drawn on from three neighbours. */
  readonly end: number;
}

/** A modified z-score above this is an outlier (Iglewicz and Hoaglin 1993). */
export const FAR = 3.5;
/** With fewer values than this left there is no telling which of them is off. */
const FEWEST = 5;
/** More slips than this in one table and it is another board. */
const MOST = 4;

/**
 * The values of a table that lie off the curve through their neighbours, likeliest slip first. Each value is held
 * against the polynomial through two neighbours on either side (three where an end is near). The one without which the
 * others lie smoothest is judged by its modified z-score among them, and by how far it is off; then the rest anew.
 *
 * @param at places, strictly rising
 * @param exact how exactly values are read off a rule: differences below it say nothing
 */
export function outliersAlong(
  at: readonly number[],
  values: readonly number[],
  exact: number,
  bearing: Bearing,
): Outlier[] {
  const found: Outlier[] = [];
  let kept = at.map((_, i) => i);
  while (kept.length > FEWEST && found.length < MOST) {
    // On nearly every board nothing is far off, and the search among the others need not be made.
    const isFar = (place: number) => farOff(place, kept, at, values, bearing);
    if (!kept.some((_, place) => isFar(place))) break;
    const oddest = oddestOf(kept, at, values);
    const place = kept.indexOf(oddest.index);
    const { off, expected, weight } = residual(place, kept, at, values);
    if (!isFar(place) || modifiedZ(off / weight, oddest.rest, exact) <= FAR) break;
    found.push({ index: oddest.index, expected });
    kept = kept.filter((i) => i !== oddest.index);
  }
  return found;
}

/** Whether a value is further off the curve through its neighbours than a board's features bear. */
function farOff(
  place: number,
  kept: readonly number[],
  at: readonly number[],
  values: readonly number[],
  bearing: Bearing,
): boolean {
  const near = Math.min(place, kept.length - 1 - place);
  const share = near === 0 ? bearing.end : near === 1 ? bearing.next : bearing.inside;
  let [least, most] = [0, -Infinity];
  kept.forEach((i, other) => {
    if (other === place) return;
    least = Math.min(least, values[i]!);
    most = Math.max(most, values[i]!);
  });
  return Math.abs(residual(place, kept, at, values).off) > share * (most - least);
}

/**
 * How far a value lies from others: 0.6745 (x − median) / MAD, MAD the median of the absolute deviations from the
 * median. B. Iglewicz and D. C. Hoaglin, "How to Detect and Handle Outliers", ASQC Quality Press, 1993 (from memory).
 *
 * @param exact deviations are taken to be at least so large, so that values read off one rule are not told apart by its
 *   marks
 */
export function modifiedZ(value: number, others: readonly number[], exact: number): number {
  const middle = median(others);
  const mad = median(others.map((each) => Math.abs(each - middle)));
  return (NORMAL_QUARTILE * Math.abs(value - middle)) / Math.max(mad, NORMAL_QUARTILE * exact);
}

/** The upper quartile of the standard normal distribution. */
const NORMAL_QUARTILE = 0.6745;

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** The value without which the residuals of the others add up to least, and those residuals. */
function oddestOf(kept: readonly number[], at: readonly number[], values: readonly number[]) {
  let oddest = { index: -1, sum: Infinity, rest: [] as number[] };
  for (const index of kept) {
    const others = kept.filter((i) => i !== index);
    const rest = others.map((_, place) => {
      const { off, weight } = residual(place, others, at, values);
      return off / weight;
    });
    const sum = rest.reduce((all, each) => all + Math.abs(each), 0);
    if (sum < oddest.sum) oddest = { index, sum, rest };
  }
  return oddest;
}

/**
 * How far the value at a place among those kept lies off the polynomial through its neighbours (Lagrange's formula),
 * and what its weights come to.
 */
function residual(place: number, kept: readonly number[], at: readonly number[], values: readonly number[]) {
  const here = at[kept[place]!]!;
  const before = kept.slice(Math.max(0, place - 3), place).reverse();
  const behind = kept.slice(place + 1, place + 4);
  const two = before.length > 1 && behind.length > 1;
  const near = two
    ? [...before.slice(0, 2), ...behind.slice(0, 2)]
    : (before.length < 2 ? [...before, ...behind] : [...behind, ...before]).slice(0, 3);
  let expected = 0;
  let squares = 1;
  for (const a of near) {
    const weight = near.reduce(
      (product, b) => (b === a ? product : (product * (here - at[b]!)) / (at[a]! - at[b]!)),
      1,
    );
    expected += weight * values[a]!;
    squares += weight * weight;
  }
  return { off: values[kept[place]!]! - expected, expected, weight: Math.sqrt(squares) };
}
