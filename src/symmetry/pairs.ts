import type { BoardSpec } from '../job/spec/board.js';
import type { Chamber } from '../chamber/chamber.js';
import type { Glue } from '../dot/dot.js';
import type { Joint, Row } from '../layup/layup.js';

/** How far two faces may differ and still be marked from one sheet, mm: a tenth of a pencil line. */
const SAME = 0.05;

/** What is marked on the faces of a plan. */
export interface Marked {
  readonly job: { readonly board: Pick<BoardSpec, 'left'> };
  readonly glue: Glue;
  readonly chambers: readonly Chamber[];
}

/**
 * Whether two rows are the same seen in a mirror on the centreline: faces, glue, chambers, depths, and the board around
 * them.
 */
export function areMirroredRows({ job, glue, chambers }: Marked, a: Row, b: Row): boolean {
  if (job.board.left) return false;
  const opposite = (u: readonly [number, number], v: readonly [number, number]) =>
    near(u[0], v[0]) && near(u[1], -v[1]);
  if (!opposite(a.face.origin, b.face.origin)) return false;
  if (!opposite(a.face.along, b.face.along) || !opposite(a.face.inward, b.face.inward)) return false;
  const spots = ({ face: { joint } }: Row) => [...dotsOn(glue, joint), ...smearsOn(glue, joint)];
  if (!areNear(spots(a), spots(b))) return false;
  const [these, those] = [a, b].map(({ id }) => chambers.filter(({ row }) => row === id));
  return these!.length === those!.length && these!.every((chamber, i) => areAlike(chamber, those![i]!));
}

/** Whether two joints, and the dots on them, are the same seen in that mirror; joints with smears have sheets each. */
export function areMirroredJoints({ job, glue }: Pick<Marked, 'job' | 'glue'>, a: Joint, b: Joint): boolean {
  if (job.board.left || !near(a.at, -b.at) || a.slope !== 0 - b.slope) return false;
  const isSmeared = [a, b].some(({ id }) => smearsOn(glue, id).length > 0);
  return !isSmeared && areNear(dotsOn(glue, a.id), dotsOn(glue, b.id));
}

const dotsOn = ({ dots }: Glue, on: string) =>
  dots.filter(({ joint }) => joint === on).map(({ s, z, diameter }) => [s, z, diameter]);

const smearsOn = ({ smears }: Glue, on: string) =>
  smears.filter(({ joint }) => joint === on).map(({ from, to, width }) => [...from, ...to, width]);

type Figures = readonly (readonly number[])[];

function areNear(these: Figures, those: Figures): boolean {
  return (
    these.length === those.length &&
    these.every((each, i) => each.length === those[i]!.length && each.every((value, k) => near(value, those[i]![k]!)))
  );
}

function areAlike(a: Chamber, b: Chamber): boolean {
  return (
    a.place === b.place &&
    areNear([a.depth], [b.depth]) &&
    areNear(
      a.contour.map(({ x, y }) => [x, y]),
      b.contour.map(({ x, y }) => [x, y]),
    )
  );
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME;
}
