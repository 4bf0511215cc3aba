import type { Board } from '../board/board.js';
import type { Allowances } from './allowances.js';
import { changes } from './changes.js';
import { placed, type Placement } from './placement.js';
import type { SawnStrip } from './sawn.js';
import type { Groups } from './groups.js';
import type { Skin } from './skin.js';

/** How far the bound holds, mm. */
export const WITHIN = 10;

/**
 * A least allowance that no placement exceeds whose ends lie within `WITHIN` mm along and up of this one, mm; what is
 * out of reach is not counted.
 *
 * The linear programme takes the stock over each point to end at the plane through its nearest place. Where the stock's
 * surface bulges over that plane, there may be more: within the reach no more than the highest bulge. By duality the
 * limits of the points that hold the programme bound it, so the largest bulge at one of those is added, and what a turn
 * moves beyond its proportion.
 */
export function boundOf(
  skin: Skin,
  group: Groups,
  strips: readonly SawnStrip[],
  blank: Board,
  allowances: Allowances,
  placement: Placement,
  length: number,
  points: Uint32Array,
): number {
  const programme = changes(skin, group, points, allowances, placement, length, WITHIN);
  const found = programme.best();
  if (!found) return Infinity;
  const lies = placed(placement, length);
  let bulge = 0;
  for (const i of programme.holding(found)) {
    const [x, y] = [skin.at[3 * i]!, skin.at[3 * i + 1]!];
    const { moved } = strips[skin.strip[i]!]!;
    const [px, pz] = lies(x, skin.at[3 * i + 2]!);
    const over = allowances.over[i]!;
    const toward = allowances.toward.subarray(3 * i, 3 * i + 3);
    const nearest = [px, y - moved.at - moved.slope * x, pz].map((value, axis) => value + over * toward[axis]!);
    bulge = Math.max(bulge, bulgeOver(blank, nearest, toward, Math.abs(over) + REACH));
  }
  return found.least + bulge + WITHIN ** 2 / length;
}

/** How far a point may move in all, mm. */
const REACH = Math.hypot(2 * WITHIN, 2 * WITHIN);

/** How far the surface stands out over the plane through a place of it, anywhere within `reach`, mm. */
function bulgeOver({ mesh }: Board, at: readonly number[], normal: Float64Array, reach: number): number {
  const { positions, triangles } = mesh;
  let most = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 3 * triangles[t]!;
    const b = 3 * triangles[t + 1]!;
    const c = 3 * triangles[t + 2]!;
    let isNear = true;
    for (let axis = 0; axis < 3 && isNear; axis++) {
      const [p, q, r] = [positions[a + axis]!, positions[b + axis]!, positions[c + axis]!];
      const from = at[axis]!;
      isNear = Math.min(p, q, r) <= from + reach && Math.max(p, q, r) >= from - reach;
    }
    if (!isNear) continue;
    for (const i of [a, b, c]) {
      let out = 0;
      for (let axis = 0; axis < 3; axis++) out += (positions[i + axis]! - at[axis]!) * normal[axis]!;
      most = Math.max(most, out);
    }
  }
  return most;
}
