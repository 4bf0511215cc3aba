import type { Grid } from '../board/grid.js';
import { clampPlacesOf } from '../view/clampPlacesOf.js';
import type { Joint } from '../layup/layup.js';
import { MM_PER_FOOT } from '../length/units.js';
import { poured } from '../length/weight.js';
import type { Plan } from '../plan.js';
import { gluedFaces } from '../view/gluedFaces.js';
import { glueBackGlue } from '../view/jointGlue.js';

/** How the pieces come together again: go by go from the centre outward. mm, g. */
export interface Closing {
  readonly goes: readonly Go[];
  /** What is checked while the glue is open, nose to tail. */
  readonly checks: readonly Check[];
}

/** One joint, or the same on both sides, glued and clamped at once. */
export interface Go {
  readonly joints: readonly string[];
  readonly pieces: readonly string[];
  /** What is spread, and what stays in the cup with it, g. */
  readonly glue: number;
  /** From the nose tip, across the board; in the order in which they are closed. */
  readonly clamps: readonly number[];
}

export interface Check {
  readonly x: number;
  /** From rail to rail, and from the centreline to either. */
  readonly width: number;
  readonly left: number;
  readonly right: number;
  /** Bottom on the centreline over a straight base line. */
  readonly bottom: number;
}

/** Joints of both sides that lie so near to the same distance from the centre are glued in one go, mm. */
const SAME = 1;
/** Between checks along the board, mm. */
const CHECKS = { mm: 300, in: MM_PER_FOOT } as const;

/** A pure function of the board as it is and its glue-up; nothing to do where no joint was opened. */
export function closingOf(plan: Plan): Closing {
  const { board, layup, job } = plan;
  const faces = gluedFaces(plan);
  const middle = (joint: Joint) => Math.abs(joint.at + (joint.slope * board.length) / 2);
  const dotted = layup.joints.filter(({ kind }) => kind === 'dotted').sort((a, b) => middle(a) - middle(b));
  const goes = dotted.reduce<Joint[][]>((found, joint) => {
    const last = found.at(-1);
    const isPair = last?.length === 1 && last[0]!.side !== joint.side && middle(joint) - middle(last[0]!) < SAME;
    return isPair ? [...found.slice(0, -1), [...last, joint]] : [...found, [joint]];
  }, []);
  return {
    goes: goes.map((joints): Go => {
      const its = faces.filter(({ joint }) => joints.some(({ id }) => id === joint.id));
      const touched = layup.pieces.filter(({ members }) =>
        joints.some(({ id }) => members.some(({ left, right }) => left?.id === id || right?.id === id)),
      );
      return {
        joints: joints.map(({ id }) => id),
        pieces: touched.map(({ id }) => id),
        glue: its.reduce((sum, face) => sum + 1000 * poured(glueBackGlue(plan, face) / 1000, job.units), 0),
        clamps: clampPlacesOf(its, job.blocks.glue.clampSpacing, job.units),
      };
    }),
    checks: checksOf(board, CHECKS[job.units]),
  };
}

function checksOf({ grid, length }: { readonly grid: Grid; readonly length: number }, step: number): Check[] {
  const { columns, apex, positions: p, xs } = grid;
  return Array.from({ length: Math.ceil(length / step) - 1 }, (_, i): Check => {
    const x = (i + 1) * step;
    const next = Math.max(
      1,
      xs.findIndex((each) => each >= x),
    );
    const share = (x - xs[next - 1]!) / (xs[next]! - xs[next - 1]!);
    const at = (side: 0 | 1, column: number, axis: 1 | 2) => {
      const of = (row: number) => p[3 * ((row * 2 + side) * columns + column) + axis]!;
      return of(next - 1) + share * (of(next) - of(next - 1));
    };
    const [left, right] = [-at(0, apex, 1), at(1, apex, 1)];
    return { x, width: left + right, left, right, bottom: at(1, 0, 2) };
  });
}
