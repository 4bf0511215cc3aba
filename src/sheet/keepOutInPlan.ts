import type { KeepOutSpec } from '../job/job.js';
import type { Stretch } from '../chamber/stretch.js';
import type { Shape } from './drawing.js';
import { widthOf } from './lettering.js';
import type { Plan } from '../plan.js';
import { circle, polygon, text, type Point } from './primitives.js';

/** Height of its number on the paper, mm. */
const LETTERS = 1.8;

/** A keep-out in plan, with its number in it; nothing when its middle lies outside the stretch. */
export function keepOutInPlan(keepOut: KeepOutSpec, number: string, { from, to }: Stretch, scale: number): Shape[] {
  const [x, y] = middleOf(keepOut);
  if (x < from || x > to) return [];
  const words = text(number, [x, y], LETTERS * scale);
  if (keepOut.kind === 'disc') return [circle('keepout', x, y, keepOut.radius), words];
  return [polygon('keepout', cornersOf(keepOut)), words];
}

/** The number by which drawings call the keep-outs, in the job's order. */
export function keepOutNumber(i: number): string {
  return `K${i + 1}`;
}

/** Where the numbers stand, as rectangles that no line should cross. */
export function keepOutWords({ job }: Plan, scale: number): Point[][] {
  return job.keepOuts.map((keepOut, i) => {
    const [x, y] = middleOf(keepOut);
    const half = { x: widthOf(keepOutNumber(i), LETTERS * scale) / 2, y: LETTERS * scale };
    return [
      [x - half.x, y - half.y],
      [x + half.x, y - half.y],
      [x + half.x, y + half.y],
      [x - half.x, y + half.y],
    ];
  });
}

function middleOf(keepOut: KeepOutSpec): Point {
  if (keepOut.kind !== 'polygon') return [keepOut.x, keepOut.y];
  const { points } = keepOut;
  const mean = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  return [mean(0), mean(1)];
}

function cornersOf(keepOut: Exclude<KeepOutSpec, { kind: 'disc' }>): readonly Point[] {
  if (keepOut.kind === 'polygon') return keepOut.points;
  const { x, y, length, width } = keepOut;
  return [
    [x - length / 2, y - width / 2],
    [x + length / 2, y - width / 2],
    [x + length / 2, y + width / 2],
    [x - length / 2, y + width / 2],
  ];
}
