import type { BoardSpec } from '../spec/board.js';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import { halfWidthAt, widestHalf } from '../half-width.js';
import type { Say } from '../mistake/say.js';
import type { Measured } from '../spec/shaped.js';

/**
 * Beyond these shares of what is drawn it is another board, or a slip. The sides of a width are drawn coarsely here
 * near the tips.
 */
const CAN_BE = { thickness: [0.5, 1.5], width: [0.5, 1.3] } as const;
/** Measures nearer to each other along and across the board are of one place, mm. */
const ONE_PLACE = 3;
/** Measures of one place may differ by so much, as the caliper is read, mm. */
const ALIKE = 1;

/**
 * Says measures after shaping that cannot be: far from the drawing, off the board, or two of one place that contradict.
 */
export function checkMeasured(shaped: readonly Measured[], board: BoardSpec, units: Units, say: Say): void {
  const length = (mm: number) => printLength(mm, units);
  shaped.forEach((measured, i) => {
    const key = measured.kind === 'wall' ? measured.wall : measured.kind;
    checkOne(measured, board, units, (what, remedy) => say.error([i, key], what, remedy));
    const before = shaped.findIndex((other, o) => o < i && isOnePlace(other, measured));
    const other = shaped[before];
    if (!other || Math.abs(other.value - measured.value) <= ALIKE) return;
    const both = `${length(other.value)} (number ${before + 1} of the list) and ${length(measured.value)}`;
    say.error([i, key], `two measures of one place contradict: ${both}`, 'measure again and keep one of them');
  });
}

function checkOne(
  measured: Measured,
  board: BoardSpec,
  units: Units,
  wrong: (what: string, remedy: string) => void,
): void {
  const length = (mm: number) => printLength(mm, units);
  const { value } = measured;
  if (measured.kind === 'wall') {
    const most =
      measured.wall === 'rail' ? widestOf(board) : Math.max(...board.profile.map(({ thickness }) => thickness));
    if (value >= most)
      wrong(`a wall of ${length(value)} is more than the board has, ${length(most)}`, `less than ${length(most)}`);
    return;
  }
  const halves = [board.right, board.left ?? board.right].map((side) => halfWidthAt(side, board.length, measured.x));
  if (measured.kind === 'thickness') {
    const half = measured.y < 0 ? halves[1]! : halves[0]!;
    if (Math.abs(measured.y) >= half)
      wrong(
        `it was measured ${length(Math.abs(measured.y))} from the centreline, outside the rail`,
        `"side" less than ${length(half)} there`,
      );
  }
  const drawn = measured.kind === 'width' ? halves[0]! + halves[1]! : thicknessAt(board, measured.x);
  const [least, most] = CAN_BE[measured.kind];
  // Toward the rail a board thins out, so only in the middle is there a least.
  const from = measured.kind === 'thickness' && measured.y !== 0 ? 0 : least * drawn;
  if (value < from || value > most * drawn)
    wrong(
      `${length(value)} cannot be: ${length(drawn)} is drawn there`,
      `from ${length(from)} to ${length(most * drawn)}; measure it again, or draw the board as it is`,
    );
}

/** Whether two measures are of one place, as the caliper is set. */
export function isOnePlace(a: Measured, b: Measured): boolean {
  if (a.kind === 'wall') return b.kind === 'wall' && a.chamber === b.chamber && a.wall === b.wall;
  if (b.kind === 'wall' || a.kind !== b.kind) return false;
  const across = a.kind === 'thickness' && b.kind === 'thickness' ? a.y - b.y : 0;
  return Math.hypot(a.x - b.x, across) <= ONE_PLACE;
}

function widestOf(board: BoardSpec): number {
  return Math.max(...[board.right, board.left ?? board.right].map(widestHalf));
}

/** Thickness on the centreline by straight lines between the stations, mm. */
function thicknessAt({ profile }: BoardSpec, x: number): number {
  const next = profile.findIndex((station) => station.x >= x);
  const b = profile[next];
  const a = profile[next - 1] ?? b;
  if (!a || !b || a === b) return b?.thickness ?? NaN;
  return a.thickness + ((b.thickness - a.thickness) * (x - a.x)) / (b.x - a.x);
}
