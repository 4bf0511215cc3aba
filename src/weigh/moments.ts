/**
 * How much of something there is and how it lies about the board: an amount (litres, m², m, kg) and its moments about
 * the nose tip and the centreline. Bulks add up; times a density they are weights.
 */
export interface Moments {
  readonly amount: number;
  /** ∫ x, amount·mm. */
  readonly x: number;
  /** ∫ x² and ∫ y², amount·mm². */
  readonly xx: number;
  readonly yy: number;
}

export const NO_MOMENTS: Moments = { amount: 0, x: 0, xx: 0, yy: 0 };

/** An amount in one place, board frame, mm. */
export function pointMoments(amount: number, x: number, y = 0): Moments {
  return { amount, x: amount * x, xx: amount * x * x, yy: amount * y * y };
}

export function times({ amount, x, xx, yy }: Moments, factor: number): Moments {
  return { amount: amount * factor, x: x * factor, xx: xx * factor, yy: yy * factor };
}

export function sumOf(parts: readonly Moments[]): Moments {
  let [amount, x, xx, yy] = [0, 0, 0, 0];
  for (const moments of parts) {
    amount += moments.amount;
    x += moments.x;
    xx += moments.xx;
    yy += moments.yy;
  }
  return { amount, x, xx, yy };
}

/** Second moment about an upright axis through the centreline at `at`, amount·mm². Parallel axis theorem. */
export function momentAbout({ amount, x, xx, yy }: Moments, at: number): number {
  return xx - 2 * at * x + at * at * amount + yy;
}

/**
 * Gathers something spread along the board: `density` per mm at two neighbouring places, straight between them.
 * `y²` is the mean square distance from the centreline at each, mm².
 */
export class AlongBoard {
  private amount = 0;
  private x = 0;
  private xx = 0;
  private yy = 0;

  add(x0: number, x1: number, d0: number, d1: number, y0 = 0, y1 = 0): void {
    const h = x1 - x0;
    this.amount += (h * (d0 + d1)) / 2;
    this.x += (h / 6) * (d0 * (2 * x0 + x1) + d1 * (x0 + 2 * x1));
    this.xx += (h / 12) * (d0 * (3 * x0 * x0 + 2 * x0 * x1 + x1 * x1) + d1 * (x0 * x0 + 2 * x0 * x1 + 3 * x1 * x1));
    this.yy += (h * (d0 * y0 + d1 * y1)) / 2;
  }

  /** What was gathered, in a unit of so many of the amounts that were put in. */
  moments(unit: number): Moments {
    return times({ amount: this.amount, x: this.x, xx: this.xx, yy: this.yy }, 1 / unit);
  }
}
