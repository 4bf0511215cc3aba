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
 * Of candidates in rising `s` those to take: no two further apart than allowed and one near each end of the run, or, where that cannot be,
 * with the least excess; of all such choices the one that costs least, then the one of fewest dots, then the one most evenly spaced. By dynamic
 * programming over the last dot taken, so nothing better exists among the candidates.
 */
export function choose<C extends Candidate>(
  candidates: readonly C[],
  { from, to, most, least, nearEnd }: Spacing,
): C[] {
  const n = candidates.length;
  if (n === 0) return [];
  const best: Chain[] = [];
  for (let i = 0; i < n; i++) {
    const { s, lost } = candidates[i]!;
    let chain: Chain = {
      excess: Math.max(0, s - from - nearEnd),
      lost,
      dots: 1,
      unevenness: (s - from) ** 2,
      before: -1,
    };
    for (let j = i - 1; j >= 0; j--) {
      const gap = s - candidates[j]!.s;
      if (gap < least) continue;
      // Further back the gap itself is an excess, so nothing there betters a chain without any.
      if (gap > most && chain.excess === 0) break;
      const before = best[j]!;
      const longer: Chain = {
        excess: before.excess + Math.max(0, gap - most),
        lost: before.lost + lost,
        dots: before.dots + 1,
        unevenness: before.unevenness + gap ** 2,
        before: j,
      };
      if (betters(longer, chain)) chain = longer;
    }
    best.push(chain);
  }
  let last = 0;
  const closed = (i: number): Chain => {
    const rest = to - candidates[i]!.s;
    const chain = best[i]!;
    return { ...chain, excess: chain.excess + Math.max(0, rest - nearEnd), unevenness: chain.unevenness + rest ** 2 };
  };
  for (let i = 1; i < n; i++) if (betters(closed(i), closed(last))) last = i;
  const chosen: C[] = [];
  for (let i = last; i >= 0; i = best[i]!.before) chosen.push(candidates[i]!);
  return chosen.reverse();
}

interface Chain {
  readonly excess: number;
  readonly lost: number;
  readonly dots: number;
  readonly unevenness: number;
  readonly before: number;
}

/** Excesses that differ by less, mm, are the same but for rounding. */
const ROUNDING = 1e-6;

function betters(a: Chain, b: Chain): boolean {
  if (Math.abs(a.excess - b.excess) > ROUNDING) return a.excess < b.excess;
  if (a.lost !== b.lost) return a.lost < b.lost;
  if (a.dots !== b.dots) return a.dots < b.dots;
  return a.unevenness < b.unevenness;
}
