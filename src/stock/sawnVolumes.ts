import type { Board } from '../board/board.js';
import { AlongBoard, type Moments } from '../weigh/moments.js';
import { slicesOf } from '../weigh/slices.js';
import type { Line, SawnStrip } from './sawn.js';

/**
 * What each strip sawn from a moulded blank holds, litres, where it stands in the glue-up: board frame, mm.
 *
 * @param along how far the board's nose tip lies behind the blank's nose end, mm
 */
export function sawnVolumes(
  blank: Pick<Board, 'grid' | 'surface'>,
  strips: readonly SawnStrip[],
  alongs: readonly number[],
): Moments[] {
  const [leftRail, rightRail] = blank.surface.outlines;
  return strips.map(({ left, right, moved }, i) => {
    const along = alongs[i]!;
    const lines = [left, right].filter((line) => line !== undefined);
    const joints = lines.map(({ at, slope }: Line) => ({ at: at - slope * along, slope }));
    const { xs, members, area: areas } = slicesOf(blank, { joints, members: { length: joints.length + 1 } });
    const area = (row: number) => areas[row * members + (left ? 1 : 0)]!;
    /** Mean square distance from the centreline of the glue-up. */
    const across = (row: number) => {
      const x = xs[row]! - along;
      const edge = (line: Line | undefined, rail: number) => (line ? line.at + line.slope * x : rail);
      const from = Math.max(edge(left, -leftRail.outer(xs[row]!)), -leftRail.outer(xs[row]!));
      const to = Math.min(edge(right, rightRail.outer(xs[row]!)), rightRail.outer(xs[row]!));
      const middle = (from + to) / 2 + moved.at + moved.slope * x;
      return middle ** 2 + Math.max(0, to - from) ** 2 / 12;
    };
    const volume = new AlongBoard();
    for (let i = 1; i < xs.length; i++)
      volume.add(xs[i - 1]! - along, xs[i]! - along, area(i - 1), area(i), across(i - 1), across(i));
    return volume.moments(1e6);
  });
}
