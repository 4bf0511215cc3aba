import type { Board } from '../../board/board.js';
import type { Stretch } from '../../chamber/stretch.js';
import type { Plan } from '../../plan.js';
import type { Caption, Part, Shape } from '../drawing.js';
import { outlineInPlan, sideOf } from '../../view/outlineInPlan.js';
import { finMarks } from './finMarks.js';
import { keepOutMark } from './keepOuts.js';
import { line, text } from '../primitives.js';
import { WORDS } from '../../words/say.js';

/** Height of letters beside the board, and how far they stand off it, on the paper, mm. */
const LETTERS = 3.5;
const OFF = 2;

/**
 * The board seen from the deck, nose to the left: outline, joints, keep-outs, and what side is which. `x` is the
 * board's, `y` too: the right side lies above.
 *
 * @param scale what a millimetre of paper stands for, so that words come out readable
 * @param joints their lines, see `jointLines`
 * @param numberOf the number of each keep-out, where there is room for numbers
 */
export function planBase(
  plan: Plan,
  stretch: Stretch,
  scale: number,
  joints: readonly Shape[],
  numberOf?: (i: number) => string,
): Omit<Part, 'name'> {
  const { board } = plan;
  const middle = (stretch.from + stretch.to) / 2;
  const [left, right] = board.surface.outlines.map((outline) => widest(outline.outer, stretch));
  const off = OFF * scale;
  const size = LETTERS * scale;
  const keepOuts = plan.job.keepOuts.map((keepOut, i) => keepOutMark(keepOut, numberOf?.(i), stretch, scale));
  // Farther out where the name of a joint stands before the nose.
  const beyond = (words: string, x: number, way: 1 | -1): Caption => ({
    places: [1, 4, 7].map((times) => [text(words, [x + way * off * times, 0], size, way < 0 ? 'right' : 'left')]),
  });
  return {
    shapes: [
      ...outlineLines(board, stretch),
      ...joints,
      ...keepOuts.flatMap(({ shapes }) => shapes),
      ...finMarks(plan, stretch, scale),
      text(WORDS.right, [middle, right! + off + size / 2], size),
      text(WORDS.left, [middle, -left! - off - size / 2], size),
    ],
    captions: [
      ...keepOuts.flatMap(({ captions }) => captions),
      ...(stretch.from <= 0 ? [beyond(WORDS.nose, 0, -1)] : []),
      ...(stretch.to >= board.length ? [beyond(WORDS.tail, board.length, 1)] : []),
    ],
  };
}

function widest(outer: (x: number) => number, { from, to }: Stretch): number {
  return Math.max(...Array.from({ length: 21 }, (_, i) => outer(from + ((to - from) * i) / 20)));
}

/** The outline: one line a side. */
function outlineLines(board: Board, stretch: Stretch): Shape[] {
  const outline = outlineInPlan(board, stretch);
  return [line('outline', ...sideOf(outline, 'right')), line('outline', ...sideOf(outline, 'left'))];
}
