import { polygonAround } from '../contour/around.js';
import { isInside } from '../contour/inside.js';
import type { Point } from '../contour/point.js';
import { rectangleAround } from '../contour/rectangle.js';
import type { Board } from '../board/board.js';
import type { Job, JointKeepOutSpec, KeepOutSpec } from '../job/job.js';
import type { Layup } from '../layup/layup.js';
import { heightsAt } from './heights.js';
import { boxOnRows } from './onRow.js';
import type { Obstacle, PlanObstacle } from './obstacle.js';

/** Straight sides that stand for a round keep-out; they go around it. */
const ROUND = 96;
/**
 * Points of the inner end of a keep-out of some depth, mm apart: between them deck and bottom stray by a few
 * hundredths.
 */
const CLOSE = 6;

/** The job's keep-outs as the rows of the board meet them. A keep-out on a joint that is never opened meets no row. */
export function keepOutsOn(
  board: Board,
  layup: Layup,
  { keepOuts, jointKeepOuts }: Pick<Job, 'keepOuts' | 'jointKeepOuts'>,
): Obstacle[] {
  return [
    ...keepOuts.map((keepOut) => onPlan(board, keepOut)),
    ...jointKeepOuts.flatMap((keepOut) =>
      boxOnRows(layup, keepOut.joint, boxOf(keepOut, layup), keepOut.name, 'keep-out'),
    ),
  ];
}

function onPlan(board: Board, keepOut: KeepOutSpec): PlanObstacle {
  const { name, depth } = keepOut;
  const outline = outlineOf(keepOut);
  if (!depth) return { on: 'plan', why: 'keep-out', name, outline };
  const sign = depth.from === 'deck' ? -1 : 1;
  const points = pointsOver(outline).flatMap(([x, y]): [number, number, number][] => {
    const z = heightsAt(board.grid, x, y)?.[depth.from];
    return z === undefined ? [] : [[x, y, z + sign * depth.deep]];
  });
  return { on: 'plan', why: 'keep-out', name, outline, end: { from: depth.from, points } };
}

/** The outline of a keep-out in plan, `[x, y]` corners, mm; straight sides around a disc. */
export function outlineOf(keepOut: KeepOutSpec): Point[] {
  if (keepOut.kind === 'polygon') return [...keepOut.points];
  const { x, y } = keepOut;
  if (keepOut.kind === 'disc') return polygonAround([x, y], keepOut.radius, ROUND);
  return rectangleAround([x, y], keepOut.length, keepOut.width);
}

/** Points along an outline and over what it encloses, `CLOSE` apart. */
function pointsOver(outline: readonly Point[]): Point[] {
  const points = outline.flatMap(([x0, y0], i): Point[] => {
    const [x1, y1] = outline[(i + 1) % outline.length]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / CLOSE));
    return Array.from({ length: steps }, (_, k): Point => [x0 + ((x1 - x0) * k) / steps, y0 + ((y1 - y0) * k) / steps]);
  });
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  for (let x = Math.min(...xs) + CLOSE; x < Math.max(...xs); x += CLOSE) {
    for (let y = Math.min(...ys) + CLOSE; y < Math.max(...ys); y += CLOSE)
      if (isInside(outline, x, y)) points.push([x, y]);
  }
  return points;
}

/** The rectangle around a keep-out on a joint, in the joint's own frame. */
function boxOf({ joint, points }: JointKeepOutSpec, layup: Layup) {
  const slope = layup.joints.find(({ id }) => id === joint)?.slope ?? 0;
  // Given straight from the nose; along a flared joint it is a little longer.
  const s = points.map(([x]) => x * Math.hypot(1, slope));
  const z = points.map(([, each]) => each);
  return { from: Math.min(...s), to: Math.max(...s), low: Math.min(...z), high: Math.max(...z) };
}
