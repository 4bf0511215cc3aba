/**
 * A linear programme of few variables: the largest `objective · x` with `rows[i] · x ≤ limits[i]` and every variable
 * between `-bounds[j]` and `bounds[j]`.
 *
 * Layout: row i stands at `i · variables` of `rows`. Coefficients are to be of the size of 1.
 */
export interface LinearProgramme {
  readonly objective: ArrayLike<number>;
  readonly rows: Float64Array;
  readonly limits: Float64Array;
  readonly bounds: ArrayLike<number>;
}

/**
 * Where the largest value is taken; undefined where no point keeps every limit. Exact but for rounding: no row is
 * overstepped by more than `SLACK`. One of several points where several are as good.
 *
 * Source: R. Seidel, "Small-dimensional linear programming and convex hulls made easy", Discrete & Computational
 * Geometry 6 (1991), 423–434. The rows are taken in an order that is shuffled by a fixed rule, so that the same
 * programme has the same answer.
 */
export function solved({ objective, rows, limits, bounds }: LinearProgramme): Float64Array | undefined {
  const d = bounds.length;
  const order = shuffled(limits.length);
  const mixed = new Float64Array(rows.length);
  order.forEach((from, to) => mixed.set(rows.subarray(d * from, d * from + d), d * to));
  const edges = Float64Array.from(order, (from) => limits[from]!);
  const low = Float64Array.from(bounds, (bound) => -bound);
  return best(d, Float64Array.from(objective), mixed, edges, edges.length, low, Float64Array.from(bounds));
}

/** How far a row may be overstepped, in the unit of the limits. */
const SLACK = 1e-9;
/** A coefficient of less is none. */
const NONE = 1e-12;

function best(
  d: number,
  objective: Float64Array,
  rows: Float64Array,
  limits: Float64Array,
  count: number,
  low: Float64Array,
  high: Float64Array,
): Float64Array | undefined {
  if (d === 1) return bestOnLine(objective[0]!, rows, limits, count, low[0]!, high[0]!);
  const x = Float64Array.from(objective, (c, j) => (c >= 0 ? high[j]! : low[j]!));
  for (let i = 0; i < count; i++) {
    let value = 0;
    for (let j = 0; j < d; j++) value += rows[d * i + j]! * x[j]!;
    if (value <= limits[i]! + SLACK) continue;
    // The best so far oversteps row i, so the new best lies on it: one variable fewer.
    let out = 0;
    for (let j = 1; j < d; j++) if (Math.abs(rows[d * i + j]!) > Math.abs(rows[d * i + out]!)) out = j;
    const pivot = rows[d * i + out]!;
    if (Math.abs(pivot) < NONE) return undefined;
    const at = limits[i]! / pivot;
    const share = new Float64Array(d);
    for (let j = 0; j < d; j++) share[j] = rows[d * i + j]! / pivot;
    const onto = (row: Float64Array, from: number, into: Float64Array, to: number): number => {
      const factor = row[from + out]!;
      for (let j = 0, k = to; j < d; j++) if (j !== out) into[k++] = row[from + j]! - factor * share[j]!;
      return factor * at;
    };
    const fewer = new Float64Array((d - 1) * (i + 2));
    const nearer = new Float64Array(i + 2);
    for (let r = 0; r < i; r++) nearer[r] = limits[r]! - onto(rows, d * r, fewer, (d - 1) * r);
    const unit = new Float64Array(d);
    unit[out] = 1;
    nearer[i] = high[out]! - onto(unit, 0, fewer, (d - 1) * i);
    unit[out] = -1;
    nearer[i + 1] = -low[out]! - onto(unit, 0, fewer, (d - 1) * (i + 1));
    const less = new Float64Array(d - 1);
    onto(objective, 0, less, 0);
    const keep = (values: Float64Array) => values.filter((_, j) => j !== out);
    const found = best(d - 1, less, fewer, nearer, i + 2, keep(low), keep(high));
    if (!found) return undefined;
    let rest = at;
    for (let j = 0, k = 0; j < d; j++) {
      if (j === out) continue;
      x[j] = found[k]!;
      rest -= share[j]! * found[k++]!;
    }
    x[out] = rest;
  }
  return x;
}

function bestOnLine(
  objective: number,
  rows: Float64Array,
  limits: Float64Array,
  count: number,
  low: number,
  high: number,
): Float64Array | undefined {
  for (let i = 0; i < count; i++) {
    const a = rows[i]!;
    if (Math.abs(a) < NONE) {
      if (limits[i]! < -SLACK) return undefined;
    } else if (a > 0) high = Math.min(high, limits[i]! / a);
    else low = Math.max(low, limits[i]! / a);
  }
  if (low > high + SLACK) return undefined;
  return Float64Array.of(objective >= 0 ? Math.max(low, high) : Math.min(low, high));
}

/**
 * The numbers 0 to `count` − 1 in an order that is no order of the board's (R. Durstenfeld, "Algorithm 235", CACM 7,
 * 1964), by a generator with a fixed start (D. Knuth, "The Art of Computer Programming", vol. 2, 3.3.4: Lewis, Goodman,
 * Miller).
 */
function shuffled(count: number): number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  let state = 20_261;
  for (let i = count - 1; i > 0; i--) {
    state = (state * 16_807) % 2_147_483_647;
    const j = state % (i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}
