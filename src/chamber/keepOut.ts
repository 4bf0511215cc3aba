import type { KeepOutSpec } from '../job/job.js';
import { toFace } from '../layup/frame.js';
import type { Face } from '../layup/layup.js';

/** A stretch along a face, mm. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The stretch of a face that a keep-out blocks for chambers open from it down to `deep`; undefined when they pass it by. */
export function blockedBy(keepOut: KeepOutSpec, face: Face, deep: number): Stretch | undefined {
  if (keepOut.kind === 'disc') {
    const [s, t] = toFace(face, keepOut.x, keepOut.y);
    const off = Math.max(0, -t, t - deep);
    if (off >= keepOut.radius) return undefined;
    const half = Math.sqrt(keepOut.radius ** 2 - off ** 2);
    return { from: s - half, to: s + half };
  }
  const { x, y, length, width } = keepOut;
  const corners = [
    [x - length / 2, y - width / 2],
    [x + length / 2, y - width / 2],
    [x + length / 2, y + width / 2],
    [x - length / 2, y + width / 2],
  ].map(([cx, cy]) => toFace(face, cx!, cy!));
  return stretchWithin(corners, deep);
}

/** The stretch of `s` in which a polygon of `[s, t]` corners lies between `t` = 0 and `deep`. */
function stretchWithin(corners: readonly (readonly [number, number])[], deep: number): Stretch | undefined {
  let from = Infinity;
  let to = -Infinity;
  const reach = (s: number) => {
    from = Math.min(from, s);
    to = Math.max(to, s);
  };
  corners.forEach(([s0, t0], i) => {
    const [s1, t1] = corners[(i + 1) % corners.length]!;
    if (t0 > 0 && t0 < deep) reach(s0);
    for (const level of [0, deep]) {
      if ((t0 - level) * (t1 - level) < 0) reach(s0 + ((level - t0) / (t1 - t0)) * (s1 - s0));
    }
  });
  return from < to ? { from, to } : undefined;
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
