import type { Board } from '../board/board.js';
import type { Layup } from '../layup/layup.js';
import { AlongBoard, type Bulk } from './bulk.js';
import type { Slices } from './slices.js';

/**
 * The glued blank: strips and stringers sawn to rocker and thickness, each as high as the board anywhere across it, the outermost as wide as the
 * board at its widest. Litres, left to right, without anything left over, and what every mm left over all around adds.
 */
export interface Blank {
  readonly members: readonly Bulk[];
  readonly perMm: readonly Bulk[];
}

export function blankOf(board: Board, layup: Layup, slices: Slices): Blank {
  const { xs } = slices;
  const [left, right] = board.surface.outlines;
  let widestLeft = 0;
  let widestRight = 0;
  for (const x of xs) {
    widestLeft = Math.max(widestLeft, left.outer(x));
    widestRight = Math.max(widestRight, right.outer(x));
  }
  const perMm: Bulk[] = [];
  const members = layup.members.map((member, m) => {
    const volume = new AlongBoard();
    const faces = new AlongBoard();
    const edge = (joint: typeof member.left, without: number) => (x: number) =>
      joint ? joint.at + joint.slope * x : without;
    const from = edge(member.left, -widestLeft);
    const to = edge(member.right, widestRight);
    let before: { x: number; width: number; height: number; y: number } | undefined;
    for (let i = 0; i < xs.length; i++) {
      const x = xs[i]!;
      const height = heightNear(slices, i, m);
      const width = Math.max(0, to(x) - from(x));
      const y = ((to(x) + from(x)) / 2) ** 2 + width ** 2 / 12;
      if (before) {
        volume.add(before.x, x, before.width * before.height, width * height, before.y, y);
        // Deck and bottom of each member; the rail of the outermost.
        const rail = member.left && member.right ? 0 : 1;
        faces.add(before.x, x, 2 * before.width + rail * before.height, 2 * width + rail * height, before.y, y);
      }
      before = { x, width, height, y };
    }
    perMm.push(faces.bulk(1e6));
    return volume.bulk(1e6);
  });
  return { members, perMm };
}

/** Height of the member's strip at a row; where the outline has left the member, that of its nearest place inside. */
function heightNear(slices: Slices, row: number, member: number): number {
  const { members, top, bottom, xs } = slices;
  for (let away = 0; away < xs.length; away++) {
    for (const i of [row - away, row + away]) {
      const at = i * members + member;
      if (i >= 0 && i < xs.length && top[at]! > bottom[at]!) return top[at]! - bottom[at]!;
    }
  }
  return 0;
}
