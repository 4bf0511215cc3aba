import type { Point } from '../contour/point.js';

/** A stretch along a face, mm. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The stretch that a profile takes, of `[s, z]` pairs. */
export function stretchOf(profile: readonly Point[]): Stretch {
  const s = profile.map(([each]) => each);
  return { from: Math.min(...s), to: Math.max(...s) };
}

/** What is left of a stretch when others are taken out of it. */
export function without(stretch: Stretch, blocked: readonly Stretch[]): Stretch[] {
  let left = [stretch];
  for (const { from, to } of blocked) {
    left = left.flatMap((each) => {
      if (to <= each.from || from >= each.to) return [each];
      return [
        ...(from > each.from ? [{ from: each.from, to: from }] : []),
        ...(to < each.to ? [{ from: to, to: each.to }] : []),
      ];
    });
  }
  return left;
}

/**
 * Draws neighbouring stretches apart until a web lies between them; those shorter than `least` count for nothing and
 * are left out.
 */
export function partedBy(web: number, stretches: readonly Stretch[], least: number): Stretch[] {
  const parts = stretches.filter(({ from, to }) => to - from >= least);
  const lack = (a: Stretch, b: Stretch) => Math.max(0, web - (b.from - a.to)) / 2;
  return parts.map((part, i) => {
    const before = parts[i - 1];
    const after = parts[i + 1];
    return {
      from: part.from + (before ? lack(before, part) : 0),
      to: part.to - (after ? lack(part, after) : 0),
    };
  });
}
