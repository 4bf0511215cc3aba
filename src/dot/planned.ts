import type { Point } from '../contour/point.js';
import type { Board } from '../board/board.js';
import type { Note } from '../chamber/chamber.js';
import type { DrawnChamber } from '../chamber/row.js';
import type { DotSpec } from '../job/spec/dots.js';
import type { ChamberSpec } from '../job/job.js';
import { Past } from '../kept/past.js';
import type { Joint } from '../layup/layup.js';
import { dotName } from '../job/names.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { obstacleOf, type Keep } from './around.js';
import { choose, type Candidate } from './choose.js';
import type { Dot } from './dot.js';
import { dotLines, dotShell, surfaceLines, type JointFace, type Lines } from './jointFace.js';
import { brokenMargin, isBetween, marginOf, type Margin } from './margin.js';
import { placesAlong } from './places.js';
import { priceOf, standingAfter, standingOf, type Price, type Standing } from './standing.js';
import type { DotSpot } from './spot.js';

/** The dots planned for one joint, and how the rows on both sides keep off them. */
export interface PlannedJoint {
  readonly dots: readonly DotSpot[];
  readonly keeps: readonly Keep[];
  /** What they are expected to cost, mm³. */
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

/** A dot that fails in the proof is taken elsewhere; so often at most for one joint. */
const MOST_RETRIES = 40;

/**
 * Plans the dots of every dotted joint among the chambers as they would stand without glue, in the order of the joints
 * given. From the centre outward, a joint's dots are placed for the least volume lost given what the joints before it
 * have already cost: a split that serves two joints is paid once, and both halves of a board come out alike.
 *
 * @param made dots that hold the blank already: they stay where they are, whatever it costs and whatever margin is left
 */
export function plannedJoints(
  board: Board,
  faces: readonly JointFace[],
  trees: PatchTrees,
  shapes: readonly DrawnChamber[],
  rules: DotRules,
  past: Past = new Past(),
  made?: readonly Dot[],
): PlannedJoint[] {
  const { diameter, margin } = rules.dots;
  const shell = dotShell(board, diameter / 2, margin, past);
  const standing = standingOf(shapes);
  const fromCentre = [...faces].sort((a, b) => Math.abs(a.joint.at) - Math.abs(b.joint.at));
  const planned = new Map(
    fromCentre.map((face) => {
      const known: Margin[] = past.hints.margins.filter(
        (dot) => dot.plane === planeOf(face.joint) && dot.diameter === diameter,
      );
      const proof = (at: Point) => {
        const margin = marginOf(face.face, at, diameter / 2, board, trees, known);
        known.push({ at, margin });
        return margin;
      };
      const stay = made?.filter(({ joint }) => joint === face.joint.id);
      const lines = { room: dotLines(board, shell, face, past), surface: surfaceLines(board, face, past) };
      return [face, planJoint(face, lines, proof, standing, rules, stay)];
    }),
  );
  return faces.map((face) => planned.get(face)!);
}

interface Offer extends Candidate {
  readonly z: number;
}

/** Where the middle of a dot keeps its margin, and where the board itself ends. */
interface JointLines {
  readonly room: Lines;
  readonly surface: Lines;
}

function planJoint(
  face: JointFace,
  { room, surface }: JointLines,
  proved: (at: Point) => number,
  standing: Standing,
  { dots, chambers }: DotRules,
  made?: readonly Dot[],
): PlannedJoint {
  const { joint } = face;
  const radius = dots.diameter / 2;
  const rules = { may: dots.may, clearance: dots.clearance, web: chambers.web, smallest: chambers.smallest };
  const note = (why: Note['why'], more: Partial<Note> = {}): Note => ({
    kind: 'glue',
    where: joint.id,
    why,
    by: [],
    ...more,
  });
  const places = placesAlong(face, room, radius + dots.clearance, standing);
  if (made?.length === 0) return { dots: [], keeps: [], lost: 0, notes: [] };
  if (places.length === 0 && !made)
    return { dots: [], keeps: [], lost: 0, notes: [note('no-room', { needs: dots.diameter + 2 * dots.margin })] };

  const prices = (at: Point): Price[] | undefined => {
    const all = face.rows.map((row) => priceOf(row, at, radius, standing.get(row.row.id) ?? [], rules));
    return all.every((price) => price !== undefined) ? all : undefined;
  };
  let offers = (made ?? places).flatMap(({ s, z }): Offer[] => {
    const all = prices([s, z]);
    if (!all && !made) return [];
    return [{ s, z, lost: all?.reduce((sum, { lost }) => sum + lost, 0) ?? 0 }];
  });
  const spacing = {
    from: places[0]?.s ?? offers[0]!.s,
    to: places[places.length - 1]?.s ?? offers[offers.length - 1]!.s,
    most: dots.spacing,
    least: dots.diameter + dots.clearance,
    nearEnd: dots.nearEnd,
  };
  const margins = new Map<Offer, number>();
  const marginAt = (offer: Offer): number => {
    const gap = margins.get(offer) ?? proved([offer.s, offer.z]);
    // Outside of the board a gap is no margin.
    const margin = isBetween(surface, [offer.s, offer.z]) ? gap : Math.min(gap, -gap);
    margins.set(offer, margin);
    return margin;
  };
  let chosen = made ? offers : choose(offers, spacing);
  for (let retry = 0; !made && retry < MOST_RETRIES; retry++) {
    const failing = chosen.filter((offer) => marginAt(offer) < dots.margin);
    if (failing.length === 0) break;
    offers = offers.filter((offer) => !failing.includes(offer));
    chosen = choose(offers, spacing);
  }

  const spots: DotSpot[] = [];
  const keeps: Keep[] = [];
  let lost = 0;
  chosen.forEach((offer, i) => {
    const at: Point = [offer.s, offer.z];
    const spot = { name: dotName(joint, i + 1), joint: joint.id, from: at, to: at, radius, margin: marginAt(offer) };
    spots.push(spot);
    const all = prices(at);
    face.rows.forEach((row, side) => {
      const price = all?.[side];
      if (price) standing.set(row.row.id, standingAfter(standing.get(row.row.id) ?? [], price));
      lost += price?.lost ?? 0;
      keeps.push({
        spot,
        at: row,
        obstacle: obstacleOf(spot, row, dots, price?.keepOff),
        swallowed: price?.swallowed ?? (made !== undefined && dots.may.includes('swallow')),
      });
    });
  });
  const broken = made ? spots.flatMap((spot) => brokenMargin(spot, dots.margin) ?? []) : [];
  const notes = [...broken, ...tooWide(chosen, spacing).map(([why, more]) => note(why, more))];
  return { dots: spots, keeps, lost, notes };
}

/** Where dots lie further apart, or further from an end, than was asked. */
function tooWide(
  chosen: readonly Candidate[],
  { from, to, most, nearEnd }: { from: number; to: number; most: number; nearEnd: number },
): [Note['why'], Partial<Note>][] {
  if (chosen.length === 0) return [['gap', { at: (from + to) / 2, has: to - from, needs: most }]];
  const first = chosen[0]!.s - from;
  const last = to - chosen[chosen.length - 1]!.s;
  return [
    ...(first > nearEnd + ROUNDING
      ? [['near-end', { at: from, has: first, needs: nearEnd }] as [Note['why'], Partial<Note>]]
      : []),
    ...chosen.slice(1).flatMap(({ s }, i): [Note['why'], Partial<Note>][] => {
      const gap = s - chosen[i]!.s;
      return gap > most + ROUNDING ? [['gap', { at: s - gap / 2, has: gap, needs: most }]] : [];
    }),
    ...(last > nearEnd + ROUNDING
      ? [['near-end', { at: to, has: last, needs: nearEnd }] as [Note['why'], Partial<Note>]]
      : []),
  ];
}

/** mm. */
const ROUNDING = 1e-6;
