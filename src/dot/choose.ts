/** A place a dot could be put, and what it would cost. */
export interface Candidate {
  readonly s: number;
  /** How much of the board is solid across too many rows with it, mm times rows, whole. */
  readonly across: number;
  /** mm³, whole. */
  readonly cost: number;
}

/** How dots must lie, mm. */
export interface Spacing {
  /** The run that is to be held together. */
  readonly from: number;
  readonly to: number;
  readonly most: number;
  /** Middles nearer than this would run together. */
  readonly least: number;
  readonly nearEnd: number;
}

/**
 * Of candidates in rising `s` those to take: no two further apart than allowed and one near each end of the run, or,
 * where that cannot be, with the least excess; of all such choices the one that leaves the least solid across too many
 * rows, then the one that costs least, then the one of fewest dots, then the one most evenly spaced. By dynamic
 * programming over the last dot taken, so nothing better exists among the candidates.
 */
export function choose<C extends Candidate>(
  candidates: readonly C[],
  { from, to, most, least, nearEnd }: Spacing,
): C[] {
  const n = candidates.length;
  if (n === 0) return [];
  // Of the best chain that ends with each candidate: its toll, and the candidate before.
  const [excess, across, cost, dots, unevenness] = Array.from({ length: 5 }, () => new Float64Array(n)) as Columns;
  const before = new Int32Array(n).fill(-1);
  const at = Float64Array.from(candidates, ({ s }) => s);
  for (let i = 0; i < n; i++) {
    const s = at[i]!;
    const own = candidates[i]!;
    let e = Math.max(0, s - from - nearEnd);
    let a = own.across;
    let c = own.cost;
    let d = 1;
    let u = (s - from) ** 2;
    for (let j = i - 1; j >= 0; j--) {
      const gap = s - at[j]!;
      if (gap < least) continue;
      // Further back the gap itself is an excess, so nothing there betters a chain without any.
      if (gap > most + ROUNDING && e === 0) break;
      const e2 = excess[j]! + Math.max(0, gap - most);
      const a2 = across[j]! + own.across;
      const c2 = cost[j]! + own.cost;
      const d2 = dots[j]! + 1;
      const u2 = unevenness[j]! + gap * gap;
      // As `isLess`, written out: handed to a function, ten numbers a step would have to be put somewhere.
      if (e2 - e > ROUNDING) continue;
      if (e - e2 <= ROUNDING) {
        if (a2 > a) continue;
        if (a2 === a) {
          if (c2 > c) continue;
          if (c2 === c && (d2 > d || (d2 === d && u2 >= u))) continue;
        }
      }
      e = e2;
      a = a2;
      c = c2;
      d = d2;
      u = u2;
      before[i] = j;
    }
    excess[i] = e;
    across[i] = a;
    cost[i] = c;
    dots[i] = d;
    unevenness[i] = u;
  }
  const closed = (i: number): Toll => {
    const rest = to - at[i]!;
    return {
      excess: excess[i]! + Math.max(0, rest - nearEnd),
      across: across[i]!,
      cost: cost[i]!,
      dots: dots[i]!,
      unevenness: unevenness[i]! + rest ** 2,
    };
  };
  let last = 0;
  for (let i = 1; i < n; i++) if (isLess(closed(i), closed(last))) last = i;
  const chosen: C[] = [];
  for (let i = last; i >= 0; i = before[i]!) chosen.push(candidates[i]!);
  return chosen.reverse();
}

type Columns = [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];

/** What a choice comes to, what counts most first. */
export interface Toll {
  /** By how much dots lie too far apart or from an end, mm. */
  readonly excess: number;
  readonly across: number;
  readonly cost: number;
  readonly dots: number;
  /** Sum of the squares of all gaps, mm². */
  readonly unevenness: number;
}

export function isLess(a: Toll, b: Toll): boolean {
  if (Math.abs(a.excess - b.excess) > ROUNDING) return a.excess < b.excess;
  if (a.across !== b.across) return a.across < b.across;
  if (a.cost !== b.cost) return a.cost < b.cost;
  return a.dots !== b.dots ? a.dots < b.dots : a.unevenness < b.unevenness;
}

/** How dots that are taken lie in the run that is to be held together: by how much too far apart, and how unevenly. */
export function spreadOf(
  taken: readonly { readonly s: number }[],
  { from, to, most, nearEnd }: Spacing,
): Pick<Toll, 'excess' | 'unevenness'> {
  if (taken.length === 0) return { excess: to - from, unevenness: (to - from) ** 2 };
  let excess = 0;
  let unevenness = 0;
  let before = from;
  taken.forEach(({ s }, i) => {
    excess += Math.max(0, s - before - (i === 0 ? nearEnd : most));
    unevenness += (s - before) ** 2;
    before = s;
  });
  return { excess: excess + Math.max(0, to - before - nearEnd), unevenness: unevenness + (to - before) ** 2 };
}

/** Excesses that differ by less, mm, are the same but for rounding. */
const ROUNDING = 1e-6;
