/** A place a dot could be put, and what it would cost. */
export interface Candidate {
  readonly s: number;
  /** mm³, whole. */
  readonly lost: number;
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
 * where that cannot be, with the least excess; of all such choices the one that costs least, then the one of fewest
 * dots, then the one most evenly spaced. By dynamic programming over the last dot taken, so nothing better exists among
 * the candidates.
 */
export function choose<C extends Candidate>(
  candidates: readonly C[],
  { from, to, most, least, nearEnd }: Spacing,
): C[] {
  const n = candidates.length;
  if (n === 0) return [];
  // Of the best chain that ends with each candidate: its cost, and the candidate before.
  const excess = new Float64Array(n);
  const lost = new Float64Array(n);
  const dots = new Float64Array(n);
  const unevenness = new Float64Array(n);
  const before = new Int32Array(n).fill(-1);
  const at = Float64Array.from(candidates, ({ s }) => s);
  for (let i = 0; i < n; i++) {
    const s = at[i]!;
    const own = candidates[i]!.lost;
    let e = Math.max(0, s - from - nearEnd);
    let l = own;
    let d = 1;
    let u = (s - from) ** 2;
    for (let j = i - 1; j >= 0; j--) {
      const gap = s - at[j]!;
      if (gap < least) continue;
      // Further back the gap itself is an excess, so nothing there betters a chain without any.
      if (gap > most && e === 0) break;
      const e2 = excess[j]! + Math.max(0, gap - most);
      const l2 = lost[j]! + own;
      const d2 = dots[j]! + 1;
      const u2 = unevenness[j]! + gap * gap;
      if (!isLess(e2, l2, d2, u2, e, l, d, u)) continue;
      e = e2;
      l = l2;
      d = d2;
      u = u2;
      before[i] = j;
    }
    excess[i] = e;
    lost[i] = l;
    dots[i] = d;
    unevenness[i] = u;
  }
  for (let i = 0; i < n; i++) {
    const rest = to - at[i]!;
    excess[i]! += Math.max(0, rest - nearEnd);
    unevenness[i]! += rest ** 2;
  }
  let last = 0;
  for (let i = 1; i < n; i++)
    if (
      isLess(excess[i]!, lost[i]!, dots[i]!, unevenness[i]!, excess[last]!, lost[last]!, dots[last]!, unevenness[last]!)
    )
      last = i;
  const chosen: C[] = [];
  for (let i = last; i >= 0; i = before[i]!) chosen.push(candidates[i]!);
  return chosen.reverse();
}

/**
 * Whether one cost is less than another: by excess, then by what is lost, by the number of dots, by how uneven they
 * lie.
 */
function isLess(e: number, l: number, d: number, u: number, e2: number, l2: number, d2: number, u2: number): boolean {
  if (Math.abs(e - e2) > ROUNDING) return e < e2;
  if (l !== l2) return l < l2;
  return d !== d2 ? d < d2 : u < u2;
}

/** Excesses that differ by less, mm, are the same but for rounding. */
const ROUNDING = 1e-6;
