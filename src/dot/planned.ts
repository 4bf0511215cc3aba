import type { Point } from '../contour/point.js';
import type { Board } from '../board/board.js';
import type { Note } from '../chamber/chamber.js';
import type { DrawnChamber } from '../chamber/row.js';
import type { DotSpec } from '../job/spec/dots.js';
import type { ChamberSpec } from '../job/job.js';
import { Past } from '../kept/past.js';
import type { Joint, Row } from '../layup/layup.js';
import { dotName } from '../job/names.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { obstacleOf, type Keep } from './around.js';
import type { Dot } from './dot.js';
import { dotLines, dotShell, surfaceLines, type JointFace } from './jointFace.js';
import { brokenMargin, isBetween, marginOf, type Margin } from './margin.js';
import { offersOn, type OpenJoint } from './offers.js';
import type { AcrossRules } from './stations.js';
import { priceOf, standingAfter, standingOf, type PriceRules, type Round, type Standing } from './standing.js';
import type { DotSpot } from './spot.js';
import { chooseTogether } from './together.js';

/** The dots planned for one joint, and how the rows on both sides keep off them. */
export interface PlannedJoint {
  readonly dots: readonly DotSpot[];
  readonly keeps: readonly Keep[];
  /** What they are expected to cost in volume, mm³. */
  readonly lost: number;
  readonly notes: readonly Note[];
}

/** The plane of a joint, as a key: what is known of a place on it holds there, whatever the joint is called. */
export function planeOf({ at, slope }: Joint): string {
  return `${at} ${slope}`;
}

export interface DotRules {
  readonly dots: DotSpec;
  readonly chambers: ChamberSpec;
}

/** The rows beside the joints, and whether those on the left, and joints there, mirror those on the right. */
export interface RowsBeside {
  readonly rows: readonly Row[];
  readonly areAlike: boolean;
}

/** Dots that fail in the proof are taken elsewhere; so often at most. */
const MOST_RETRIES = 40;

/**
 * Plans the dots of all dotted joints together among the chambers as they would stand without glue, in the order of the
 * joints given. A split that serves two joints is paid once, and both halves of a board that is alike come out alike.
 * Where dots landed elsewhere on one joint is not asked: those of the others have been glued as planned.
 *
 * @param made dots of the whole blank, glued up as drawn and shaped since: they stay, whatever margin is left
 */
export function plannedJoints(
  board: Board,
  faces: readonly JointFace[],
  trees: PatchTrees,
  shapes: readonly DrawnChamber[],
  { dots, chambers }: DotRules,
  { rows, areAlike }: RowsBeside,
  made?: readonly Dot[],
  past: Past = new Past(),
): PlannedJoint[] {
  const shell = dotShell(board, dots.diameter / 2, dots.margin, past);
  const standing = standingOf(shapes);
  const prices = { may: dots.may, clearance: dots.clearance, web: chambers.web, smallest: chambers.smallest };
  const isAsked = ({ side }: Pick<Joint, 'side'>) => !(areAlike && side === 'L');
  const outward = [...faces].sort((a, b) => Math.abs(a.joint.at) - Math.abs(b.joint.at));
  const asked = outward.filter(({ joint }) => isAsked(joint));
  let joints = asked.map((face): OpenJoint => {
    const own = made?.filter(({ joint }) => joint === face.joint.id).map(roundOfDot);
    return offersOn(face, dotLines(board, shell, face, past), dots, standing, prices, own);
  });
  const marginAt = new Map(faces.map((face) => [face, marginsOn(face, dots.diameter, board, trees, past)]));
  const across: AcrossRules = {
    rows: rows.filter(isAsked),
    isHalf: areAlike,
    length: board.length,
    share: dots.across,
    ribs: ribsOf(dots, chambers),
  };
  const rules = { ...prices, across };
  let taken = chooseTogether(joints, standing, rules);
  for (let retry = 0; retry < MOST_RETRIES; retry++) {
    const isShort = (joint: number) => (dot: Round) => marginAt.get(asked[joint]!)!(dot) < dots.margin;
    const failing = new Set(taken.flatMap((all, i) => (joints[i]!.isMade ? [] : all.filter(isShort(i)))));
    if (failing.size === 0) break;
    joints = joints.map((joint) => ({ ...joint, offers: joint.offers.filter((dot) => !failing.has(dot)) }));
    taken = chooseTogether(joints, standing, rules, taken);
  }
  const planned = new Map(
    outward.map((face) => {
      const { side, number } = face.joint;
      const i = isAsked(face.joint)
        ? asked.indexOf(face)
        : asked.findIndex(({ joint }) => joint.side !== side && joint.number === number);
      return [face, takenOn(face, joints[i]!, taken[i]!, marginAt.get(face)!, standing, dots, prices)];
    }),
  );
  return faces.map((face) => planned.get(face)!);
}

const roundOfDot = ({ s, z, diameter }: Dot): Round => ({ s, z, radius: diameter / 2 });

/** Where all rows may be solid for dots: so far to both sides of each rib that is wanted that its web and a dot fit. */
function ribsOf({ ribs, diameter, clearance }: DotSpec, { web }: ChamberSpec): AcrossRules['ribs'] {
  const off = web / 2 + diameter + 2 * clearance;
  return ribs.map((x) => [x - off, x + off]);
}

/** The proved margin of a dot on a joint; outside of the board a gap is no margin. */
function marginsOn(
  face: JointFace,
  diameter: number,
  board: Board,
  trees: PatchTrees,
  past: Past,
): (dot: Round) => number {
  const surface = surfaceLines(board, face, past);
  const known: Margin[] = past.hints.margins.filter(
    (dot) => dot.plane === planeOf(face.joint) && dot.diameter === diameter,
  );
  const proved = new Map<Round, number>();
  return (dot) => {
    const at: Point = [dot.s, dot.z];
    const gap = proved.get(dot) ?? marginOf(face.face, at, dot.radius, board, trees, known);
    if (!proved.has(dot)) known.push({ at, margin: gap });
    proved.set(dot, gap);
    return isBetween(surface, at) ? gap : Math.min(gap, -gap);
  };
}

/** The dots that were chosen for one joint, and what that leaves standing for the joints after it. */
function takenOn(
  face: JointFace,
  joint: OpenJoint,
  taken: readonly Round[],
  marginAt: (dot: Round) => number,
  standing: Standing,
  dots: DotSpec,
  rules: PriceRules,
): PlannedJoint {
  const { id } = face.joint;
  const spots: DotSpot[] = [];
  const keeps: Keep[] = [];
  let lost = 0;
  taken.forEach((dot, i) => {
    const at: Point = [dot.s, dot.z];
    const { radius } = dot;
    const name = dotName(face.joint, i + 1);
    const spot = { name, joint: id, from: at, to: at, radius, margin: marginAt(dot) };
    spots.push(spot);
    for (const row of face.rows) {
      const parts = standing.get(row.row.id) ?? [];
      const price = priceOf(row, dot, parts, rules);
      if (price) standing.set(row.row.id, standingAfter(parts, price));
      lost += price?.lost ?? 0;
      const swallowed = price?.swallowed ?? (joint.isMade && dots.may.includes('swallow'));
      keeps.push({ spot, at: row, obstacle: obstacleOf(spot, row, dots, price?.keepOff), swallowed });
    }
  });
  const broken = joint.isMade ? spots.flatMap((spot) => brokenMargin(spot, dots.margin) ?? []) : [];
  return { dots: spots, keeps, lost, notes: [...broken, ...spacingNotes(id, joint, taken, dots)] };
}

/** Where dots lie further apart, or further from an end, than was asked; where a joint holds none. */
function spacingNotes(where: string, joint: OpenJoint, taken: readonly Round[], dots: DotSpec): Note[] {
  const note = (why: Note['why'], more: Partial<Note>): Note => ({ kind: 'glue', where, why, by: [], ...more });
  if (!joint.hasRoom) return joint.isMade ? [] : [note('no-room', { needs: dots.diameter + 2 * dots.margin })];
  const { from, to, most, nearEnd } = joint.spacing;
  if (taken.length === 0)
    return joint.isMade ? [] : [note('gap', { at: (from + to) / 2, has: to - from, needs: most })];
  const first = taken[0]!.s - from;
  const last = to - taken[taken.length - 1]!.s;
  const gaps = taken.slice(1).map(({ s }, i) => ({ at: (s + taken[i]!.s) / 2, has: s - taken[i]!.s, needs: most }));
  return [
    ...(first > nearEnd + ROUNDING ? [note('near-end', { at: from, has: first, needs: nearEnd })] : []),
    ...gaps.filter(({ has }) => has > most + ROUNDING).map((gap) => note('gap', gap)),
    ...(last > nearEnd + ROUNDING ? [note('near-end', { at: to, has: last, needs: nearEnd })] : []),
  ];
}

/** mm. */
const ROUNDING = 1e-6;
