import type { Point } from '../contour/point.js';
import { MM_PER_INCH } from '../length/units.js';
import type { Plan } from '../plan.js';
import { surfaceAt } from '../view/section.js';

/** What is measured at a station of the shaped board, and what it is meant to be. Board frame, mm. */
export interface StationMeant {
  readonly x: number;
  /** On the centreline, straight up and down. */
  readonly thickness: number;
  /** So far from the centreline to either side, and how thick it is there, right and left. */
  readonly side: number;
  readonly right: number;
  readonly left: number;
  /** From rail to rail. */
  readonly width: number;
}

/** Off the centreline is measured at whole marks of this, mm. */
const MARK = { mm: 10, in: MM_PER_INCH / 2 } as const;

/** What is measured at every station of the job but the tips, by the board as drawn. */
export function stationsOf(plan: Plan): StationMeant[] {
  const { length } = plan.drawn?.board ?? plan.board;
  return plan.job.board.profile.filter(({ x }) => x > 0 && x < length).flatMap(({ x }) => meantAt(plan, x) ?? []);
}

/** What is measured at a place along the board, by the board as drawn; nothing where the board has no middle. */
export function meantAt({ job, board, drawn }: Plan, x: number): StationMeant | undefined {
  const mark = MARK[job.units];
  const loops = surfaceAt((drawn?.board ?? board).mesh, x).map(({ points }) => points);
  const across = loops.flatMap((points) => points.map(([y]) => y));
  const [left, right] = [Math.min(...across), Math.max(...across)];
  const side = Math.floor(Math.min(right, -left) / 2 / mark) * mark;
  // A swallow's notch has no centreline.
  const thickness = thickAt(loops, 0);
  if (thickness === undefined || side === 0) return undefined;
  return {
    x,
    thickness,
    side,
    right: thickAt(loops, side)!,
    left: thickAt(loops, -side)!,
    width: right - left,
  };
}

/** From the lowest to the highest point over a place across the board; nothing where there is none. */
function thickAt(loops: readonly (readonly Point[])[], y: number): number | undefined {
  const heights = loops.flatMap((points) =>
    points.flatMap(([fromY, fromZ], i) => {
      const [toY, toZ] = points[(i + 1) % points.length]!;
      if ((fromY - y) * (toY - y) > 0 || fromY === toY) return [];
      return [fromZ + ((toZ - fromZ) * (y - fromY)) / (toY - fromY)];
    }),
  );
  return heights.length < 2 ? undefined : Math.max(...heights) - Math.min(...heights);
}
