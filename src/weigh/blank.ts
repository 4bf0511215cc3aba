import type { Board } from '../board/board.js';
import type { Joint, LaidMember, Layup } from '../layup/layup.js';
import type { BlankSpec } from '../job/spec/dots.js';
import { AlongBoard, type Moments } from './moments.js';
import type { Slices } from './slices.js';

/**
 * The glued blank: strips and stringers sawn to rocker and thickness, each as high as the board anywhere across it, the
 * outermost as wide as the board at its widest. Litres, left to right, without anything left over, and what every mm
 * left over all around adds.
 */
export interface Blank {
  readonly members: readonly Moments[];
  readonly perMm: readonly Moments[];
  readonly widest: { readonly left: number; readonly right: number };
  /** What each member holds as sawn or milled from the job's stock, litres; undefined where there is none for it. */
  readonly fromStock?: readonly (Moments | undefined)[];
}

export function blankOf(board: Board, layup: Layup, slices: Slices): Blank {
  const { xs } = slices;
  const widest = widestOf(board);
  const perMm: Moments[] = [];
  const members = layup.members.map((member, m) => {
    const volume = new AlongBoard();
    const faces = new AlongBoard();
    const { from, to } = edgesOf(member, widest);
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
    perMm.push(faces.moments(1e6));
    return volume.moments(1e6);
  });
  return { members, perMm, widest };
}

/**
 * A blank whose strips are not sawn to the rocker: a box around the board of the thickness that the job gives, litres,
 * left to right.
 */
export function boxBlank(
  layup: Layup,
  length: number,
  { widest }: Blank,
  thickness: number,
  spec: BlankSpec,
): Moments[] {
  return layup.members.map((member) => {
    const { from, to } = edgesOf(member, widest);
    const box = new AlongBoard();
    const width = (x: number) => Math.max(0, to(x) - from(x));
    const y = (x: number) => ((to(x) + from(x)) / 2) ** 2 + width(x) ** 2 / 12;
    const [a, b] = [-spec.nose, length + spec.tail];
    box.add(a, b, width(a) * thickness, width(b) * thickness, y(a), y(b));
    return box.moments(1e6);
  });
}

function widestOf({ grid, surface }: Board) {
  const [left, right] = surface.outlines;
  const widest = { left: 0, right: 0 };
  for (const x of grid.xs) {
    widest.left = Math.max(widest.left, left.outer(x));
    widest.right = Math.max(widest.right, right.outer(x));
  }
  return widest;
}

/** The member's edges in plan; where it runs to the rail, the widest of the board. */
function edgesOf({ left, right }: LaidMember, widest: Blank['widest']) {
  const edge = (joint: Joint | undefined, without: number) => (x: number) =>
    joint ? joint.at + joint.slope * x : without;
  return { from: edge(left, -widest.left), to: edge(right, widest.right) };
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
