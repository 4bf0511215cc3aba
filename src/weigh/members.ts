import type { Board } from '../board/board.js';
import type { Joint, LaidMember, Layup } from '../layup/layup.js';

/** What each member has of the finished, solid board, litres, left to right. */
export function memberVolumes({ grid }: Board, { members }: Layup): { member: LaidMember; volume: number }[] {
  const left = members.map(() => 0);
  let before: number[] | undefined;
  for (let row = 0; row < grid.rows; row++) {
    const x = grid.xs[row]!;
    const areas = members.map(
      (m) => areaUpTo(grid, row, lineAt(m.right, x, Infinity)) - areaUpTo(grid, row, lineAt(m.left, x, -Infinity)),
    );
    if (before) areas.forEach((area, i) => (left[i]! += ((area + before![i]!) / 2) * (x - grid.xs[row - 1]!)));
    before = areas;
  }
  return members.map((member, i) => ({ member, volume: left[i]! / 1e6 }));
}

function lineAt(joint: Joint | undefined, x: number, without: number): number {
  return joint ? joint.at + joint.slope * x : without;
}

/** Area of the section at a row to the left of `y`, mm²: both halves, each between its deck and its bottom. */
function areaUpTo({ columns, apex, positions }: Board['grid'], row: number, y: number): number {
  let area = 0;
  for (const side of [0, 1]) {
    const first = (row * 2 + side) * columns;
    // Around each half from the keel: the integral of z over y, bottom against deck.
    for (let i = first + 1; i < first + columns; i++) {
      const ya = positions[3 * (i - 1) + 1]!;
      const yb = positions[3 * i + 1]!;
      const low = Math.min(ya, yb);
      const high = Math.min(Math.max(ya, yb), y);
      if (high <= low) continue;
      const slope = (positions[3 * i + 2]! - positions[3 * (i - 1) + 2]!) / (yb - ya);
      const z = positions[3 * (i - 1) + 2]! + slope * ((low + high) / 2 - ya);
      // On the right the bottom runs outward and the deck back; on the left the other way about.
      area += (i > first + apex ? 1 : -1) * z * (high - low);
    }
  }
  return area;
}
