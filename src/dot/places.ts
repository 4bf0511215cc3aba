import type { JointFace, Lines } from './jointFace.js';
import type { Standing } from './standing.js';

/**
 * Places along a joint where a dot keeps its margin, in rising `s`: even steps, and where it just clears a chamber or
 * lies in the middle of a web.
 */
export function placesAlong(
  { rows }: JointFace,
  lines: Lines,
  off: number,
  standing: Standing,
): { s: number; z: number }[] {
  const at = new Set<number>();
  for (let i = 0; i < lines.count; i++) at.add(i * lines.step);
  for (const { row, near } of rows) {
    // At a far face that is not parallel these are a little off, and only less useful for it.
    if (!near && Math.abs(row.face.along[1] - row.through!.along[1]) > 1e-9) continue;
    const parts = standing.get(row.id) ?? [];
    parts.forEach(({ from, to }, i) => {
      at.add(from - off).add(to + off);
      if (i > 0) at.add((parts[i - 1]!.to + from) / 2);
    });
  }
  return [...at]
    .sort((a, b) => a - b)
    .flatMap((s) => {
      const room = lines.top(s) - lines.bottom(s);
      return s >= 0 && room >= 0 ? [{ s, z: (lines.top(s) + lines.bottom(s)) / 2 }] : [];
    });
}
