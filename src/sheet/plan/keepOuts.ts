import type { Point } from '../../contour/point.js';
import type { KeepOutSpec } from '../../job/job.js';
import type { Stretch } from '../../chamber/stretch.js';
import type { Part } from '../drawing.js';
import { widthOf } from '../lettering.js';
import type { Plan } from '../../plan.js';
import { keepOutInPlan } from '../../view/keepOutInPlan.js';
import { circle, polygon, text } from '../primitives.js';

/** Height of its number, and how far it stands off where it has no room inside, on the paper, mm. */
const LETTERS = 2.5;
const OFF = 1;

/**
 * A keep-out in plan with its number, if it is to have one, in it or beside it; nothing when its middle lies outside
 * the stretch.
 */
export function keepOutMark(
  keepOut: KeepOutSpec,
  number: string | undefined,
  { from, to }: Stretch,
  scale: number,
): Omit<Part, 'name'> {
  const seen = keepOutInPlan(keepOut);
  const [x, y] = seen.middle;
  if (x < from || x > to) return { shapes: [], captions: [] };
  const shapes = [seen.kind === 'disc' ? circle('keepout', x, y, seen.radius) : polygon('keepout', seen.corners)];
  if (number === undefined) return { shapes, captions: [] };
  const places = wordBoxes(keepOut, number, scale).map(({ at }) => [text(number, at, LETTERS * scale)]);
  return { shapes, captions: [{ places }] };
}

/** The number by which drawings call the keep-outs, in the job's order. */
export function keepOutNumber(i: number): string {
  return `K${i + 1}`;
}

/** Where the numbers may stand, as rectangles that no joint should cross. */
export function keepOutWords({ job }: Plan, scale: number): Point[][] {
  return job.keepOuts.flatMap((keepOut, i) =>
    wordBoxes(keepOut, keepOutNumber(i), scale).map(({ at: [x, y], half }): Point[] => [
      [x - half[0], y - half[1]],
      [x + half[0], y - half[1]],
      [x + half[0], y + half[1]],
      [x - half[0], y + half[1]],
    ]),
  );
}

/**
 * Places for a number with half of what it takes there: within the keep-out, to its right and left, before and behind
 * it.
 */
function wordBoxes(
  keepOut: KeepOutSpec,
  number: string,
  scale: number,
): { readonly at: Point; readonly half: Point }[] {
  const {
    middle: [x, y],
    halfSize: [along, across],
  } = keepOutInPlan(keepOut);
  const half: Point = [widthOf(number, LETTERS * scale) / 2 + OFF * scale, 0.8 * LETTERS * scale];
  const [dx, dy] = [along + half[0] + OFF * scale, across + half[1] + OFF * scale];
  const places: Point[] = [
    [x, y],
    [x, y + dy],
    [x, y - dy],
    [x - dx, y],
    [x + dx, y],
  ];
  return places.map((at) => ({ at, half }));
}
