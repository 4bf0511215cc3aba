import type { Board } from '../board/board.js';

/**
 * The finished, solid board cut across at every row of its grid and along every joint.
 *
 * Layout: member `m` (left to right, as in `Layup.members`) of row `i` is number `i · members + m`; joint `j` of row
 * `i` is number `i · joints + j`. Board frame, mm. What the outline leaves nothing of is 0.
 */
export interface Slices {
  readonly xs: Float64Array;
  readonly members: number;
  readonly joints: number;
  /** ∫ dA, ∫ z dA, ∫ z² dA, ∫ y² dA. */
  readonly area: Float64Array;
  readonly firstMoment: Float64Array;
  readonly secondMoment: Float64Array;
  readonly secondMomentAcross: Float64Array;
  /** Highest deck and lowest bottom of the member. */
  readonly top: Float64Array;
  readonly bottom: Float64Array;
  /** From bottom to deck along each joint. */
  readonly jointHeight: Float64Array;
}

/** What a board is cut along: straight joints, left to right, and how many members they part. */
export interface Joined {
  readonly members: { readonly length: number };
  readonly joints: readonly { readonly at: number; readonly slope: number }[];
}

/** Each half is walked from the keel around to the deck: what lies under the deck, less what lies under the bottom. */
export function slicesOf({ grid }: Pick<Board, 'grid'>, layup: Joined): Slices {
  const { rows, columns, apex, positions, xs } = grid;
  const members = layup.members.length;
  const joints = layup.joints.length;
  const each = (count: number) => new Float64Array(rows * count);
  const slices: Slices = {
    xs,
    members,
    joints,
    area: each(members),
    firstMoment: each(members),
    secondMoment: each(members),
    secondMomentAcross: each(members),
    top: each(members).fill(-Infinity),
    bottom: each(members).fill(Infinity),
    jointHeight: each(joints),
  };
  const lines = new Float64Array(joints);
  for (let row = 0; row < rows; row++) {
    layup.joints.forEach(({ at, slope }, j) => (lines[j] = at + slope * xs[row]!));
    for (const side of [0, 1]) {
      const first = (row * 2 + side) * columns;
      let member = 0;
      for (let i = first + 1; i < first + columns; i++) {
        const ya = positions[3 * i - 2]!;
        const yb = positions[3 * i + 1]!;
        const za = positions[3 * i - 1]!;
        const zb = positions[3 * i + 2]!;
        if (ya === yb) continue;
        const slope = (zb - za) / (yb - ya);
        const sign = i > first + apex ? 1 : -1;
        let low = Math.min(ya, yb);
        const high = Math.max(ya, yb);
        while (member > 0 && lines[member - 1]! > low) member--;
        while (member < joints && lines[member]! <= low) member++;
        // A joint belongs to the stretch that it begins, so that one along the centreline is met once, on the right.
        for (let j = member - 1; j >= 0 && lines[j] === low; j--) {
          slices.jointHeight[row * joints + j]! += sign * (za + slope * (low - ya));
        }
        while (member < joints && lines[member]! < high) {
          const line = lines[member]!;
          slices.jointHeight[row * joints + member]! += sign * (za + slope * (line - ya));
          addStrip(slices, row * members + member, sign, low, line, za + slope * (low - ya), za + slope * (line - ya));
          low = line;
          member++;
        }
        addStrip(slices, row * members + member, sign, low, high, za + slope * (low - ya), za + slope * (high - ya));
      }
    }
  }
  return slices;
}

/**
 * What lies under a straight stretch of the section, from height 0. Simpson's rule, exact: nothing here is of more than
 * third degree.
 */
function addStrip(s: Slices, at: number, sign: number, y0: number, y1: number, z0: number, z1: number): void {
  const w = (sign * (y1 - y0)) / 6;
  const y = (y0 + y1) / 2;
  const z = (z0 + z1) / 2;
  s.area[at]! += 6 * w * z;
  s.firstMoment[at]! += (w * (z0 * z0 + 4 * z * z + z1 * z1)) / 2;
  s.secondMoment[at]! += (w * (z0 * z0 * z0 + 4 * z * z * z + z1 * z1 * z1)) / 3;
  s.secondMomentAcross[at]! += w * (y0 * y0 * z0 + 4 * y * y * z + y1 * y1 * z1);
  if (sign > 0) s.top[at] = Math.max(s.top[at]!, z0, z1);
  else s.bottom[at] = Math.min(s.bottom[at]!, z0, z1);
}
