import type { Board } from '../board/board.js';
import type { Chamber, Note } from '../chamber/chamber.js';
import type { DotSpec } from '../job/dots.js';
import type { ChamberSpec } from '../job/job.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { choose, type Candidate } from './choose.js';
import { dotLines, dotShell, type JointFace, type Lines } from './jointFace.js';
import { marginOf } from './margin.js';
import { obstacleOf, type Keep } from './around.js';
import { priceOf, standingOf, type Price, type Standing } from './standing.js';
import type { Pair, Spot } from './spot.js';

/** The dots planned for one joint, and how the rows on both sides keep off them. */
export interface PlannedJoint {
  readonly joint: string;
  readonly spots: readonly Spot[];
  readonly keeps: readonly Keep[];
  /** What they are expected to cost, mm³. */
  readonly lost: number;
  readonly notes: readonly Note[];
}

export interface DotRules {
  readonly dots: DotSpec;
  readonly chambers: ChamberSpec;
}

/** A dot that fails in the proof is taken elsewhere; so often at most for one joint. */
const MOST_RETRIES = 40;
/** Places compared along a joint, every so many steps of its lines. */
const EVERY = 1;

/**
 * Plans the dots of every dotted joint among the chambers as they would stand without glue, in the order of the joints given. From the centre
 * outward, a joint's dots are placed for the least volume lost given what the joints before it have already cost: a split that serves two joints
 * is paid once, and both halves of a board come out alike.
 */
export function plannedJoints(
  board: Board,
  faces: readonly JointFace[],
  trees: PatchTrees,
  chambers: readonly Chamber[],
  rules: DotRules,
): PlannedJoint[] {
  const { diameter, margin } = rules.dots;
  const shell = dotShell(board, diameter / 2, margin);
  const standing = standingOf(chambers);
  const fromCentre = [...faces].sort((a, b) => Math.abs(a.joint.at) - Math.abs(b.joint.at));
  const planned = new Map(
    fromCentre.map((face) => [face, planJoint(face, dotLines(board, shell, face), board, trees, standing, rules)]),
  );
  return faces.map((face) => planned.get(face)!);
}

interface Offer extends Candidate {
  readonly z: number;
}

function planJoint(
  face: JointFace,
  lines: Lines,
  board: Board,
  trees: PatchTrees,
  standing: Standing,
  { dots, chambers }: DotRules,
): PlannedJoint {
  const { joint } = face;
  const radius = dots.diameter / 2;
  const rules = { may: dots.may, clearance: dots.clearance, web: chambers.web, smallest: chambers.smallest };
  const partsOf = (row: string) => standing.get(row) ?? [];
  const prices = (at: Pair): Price[] | undefined => {
    const all: Price[] = [];
    for (const row of face.rows) {
      const price = priceOf(row, at, radius, partsOf(row.row.id), rules);
      if (!price) return undefined;
      all.push(price);
    }
    return all;
  };
  const places = placesAlong(face, lines, radius + dots.clearance, standing);
  const note = (why: Note['why'], more: Partial<Note> = {}): Note => ({
    kind: 'glue',
    where: joint.id,
    why,
    by: [],
    ...more,
  });
  if (places.length === 0)
    return {
      joint: joint.id,
      spots: [],
      keeps: [],
      lost: 0,
      notes: [note('no-room', { needs: dots.diameter + 2 * dots.margin })],
    };

  const spacing = {
    from: places[0]!.s,
    to: places[places.length - 1]!.s,
    most: dots.spacing,
    least: dots.diameter + dots.clearance,
    nearEnd: dots.nearEnd,
  };
  let offers = places.flatMap((place): Offer[] => {
    const all = prices([place.s, place.z]);
    return all ? [{ ...place, lost: all.reduce((sum, { lost }) => sum + lost, 0) }] : [];
  });
  let chosen = choose(offers, spacing);
  for (let retry = 0; retry < MOST_RETRIES; retry++) {
    const failing = chosen.filter(({ s, z }) => marginOf(face.face, [s, z], radius, board, trees) < dots.margin);
    if (failing.length === 0) break;
    offers = offers.filter((offer) => !failing.includes(offer));
    chosen = choose(offers, spacing);
  }

  const spots: Spot[] = [];
  const keeps: Keep[] = [];
  let lost = 0;
  chosen.forEach(({ s, z }, i) => {
    const spot: Spot = { name: `${joint.id}.${i + 1}`, joint: joint.id, from: [s, z], to: [s, z], radius };
    spots.push(spot);
    const all = prices([s, z]);
    face.rows.forEach((row, side) => {
      const price = all?.[side];
      if (price) standing.set(row.row.id, price.parts);
      lost += price?.lost ?? 0;
      keeps.push({
        spot,
        at: row,
        obstacle: obstacleOf(spot, row, dots, price?.keepOff),
        swallowed: price?.swallowed ?? false,
      });
    });
  });
  return { joint: joint.id, spots, keeps, lost, notes: tooWide(chosen, spacing).map(([why, more]) => note(why, more)) };
}

/** Places along a joint where a dot keeps its margin, in rising `s`: even steps, and where it just clears a chamber or lies in the middle of a web. */
function placesAlong({ rows }: JointFace, lines: Lines, off: number, standing: Standing): { s: number; z: number }[] {
  const at = new Set<number>();
  for (let i = 0; i < lines.count; i += EVERY) at.add(i * lines.step);
  for (const { row, near } of rows) {
    // At a far face that is not parallel these are a little off, and only less useful for it.
    if (!near && Math.abs(row.face.along[1] - row.through!.along[1]) > 1e-9) continue;
    const parts = standing.get(row.id) ?? [];
    parts.forEach(({ from, to }, i) => {
      at.add(from - off).add(to + off);
      if (i > 0) at.add((parts[i - 1]!.to + from) / 2);
    });
  }
  return [...at]
    .sort((a, b) => a - b)
    .flatMap((s) => {
      const room = lines.top(s) - lines.bottom(s);
      return s >= 0 && room >= 0 ? [{ s, z: (lines.top(s) + lines.bottom(s)) / 2 }] : [];
    });
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
