import type { Material } from '../job/spec/material.js';
import type { Board } from '../board/board.js';
import type { Chamber } from '../chamber/chamber.js';
import { spanAt } from '../contour/span.js';
import type { Job } from '../job/job.js';
import type { Layup, Row } from '../layup/layup.js';
import { depthsOf, within } from './cuts.js';
import { glassParts } from './glass.js';
import { modulusOf, shearModulusOf } from './modulus.js';
import { bendingOf, rectangle, type Bending, type SectionPart } from './bending.js';
import { slicesOf, type Slices } from './slices.js';
import { USUAL_GLASS } from '../job/usual-glass.js';

/**
 * How stiff a board is from nose to tail. It compares layouts of one board; it is no promise that the board survives a
 * wave.
 */
export interface Stiffness {
  readonly places: readonly StiffPlace[];
  /** Where the skin is strained most when the board hangs between two crests and is loaded in the middle. */
  readonly weakest: StiffPlace;
  /** How far its middle then gives under 1 kN, mm. */
  readonly sag: number;
  /**
   * By how much the share changes within one pitch, on the average: a hard spot beside a soft one is where boards
   * break.
   */
  readonly unevenness: number;
}

export interface StiffPlace {
  /** From the nose, mm. */
  readonly x: number;
  /** Against bending, N·mm². */
  readonly stiffness: number;
  /** Against shear, N. */
  readonly shear: number;
  /** Of what the same board would have if nothing were routed out of it. */
  readonly share: number;
  /** Of the outer skin, per kN, as a share of its length. */
  readonly strain: number;
}

/** Places looked at, mm apart: a few a web. */
const STEP = 5;
/** The crests lie this share of the length from either tip; common practice, no source. */
const REST = 1 / 8;
/** N. */
const LOAD = 1000;

/** @param job its glass, fill and pitch */
export function stiffnessOf(
  board: Board,
  layup: Layup,
  chambers: readonly Chamber[],
  job: Pick<Job, 'glass' | 'fill' | 'chambers'>,
): Stiffness {
  const slices = slicesOf(board, layup);
  const glass = glassParts(board.grid, job.glass ?? USUAL_GLASS);
  const rows = new Map(layup.rows.map((row) => [row.id, row]));
  const cuts = chambers.map((chamber) => ({ chamber, row: rows.get(chamber.row)! }));
  const [from, to] = [board.length * REST, board.length * (1 - REST)];

  const count = Math.ceil((to - from) / STEP);
  const places = Array.from({ length: count + 1 }, (_, i): StiffPlace => {
    const x = from + ((to - from) * i) / count;
    const at = rowBefore(slices.xs, x);
    const members = (modulus: Modulus) => memberParts(slices, layup, at, modulus);
    const taken = (modulus: Modulus) =>
      cuts.flatMap(({ chamber, row }) => cutParts(chamber, row, x, job.fill, modulus));
    const solid = [between(glass[at.row]!, glass[at.row + 1]!, at.share), ...members(modulusOf)];
    const whole = bendingOf(solid);
    const routed = bendingOf([...solid, ...taken(modulusOf)]);
    const arm = Math.min(x - from, to - x) / 2;
    return {
      x,
      stiffness: routed.stiffness,
      shear: [...members(shearModulusOf), ...taken(shearModulusOf)].reduce(
        (sum, part) => sum + part.modulus * part.area,
        0,
      ),
      share: routed.stiffness / whole.stiffness,
      strain: (LOAD * arm * outerFibre(routed, slices, at.row)) / routed.stiffness,
    };
  });
  return {
    places,
    weakest: places.reduce((a, b) => (b.strain > a.strain ? b : a)),
    sag: sagOf(places, from, to),
    unevenness: unevennessOf(places, job.chambers.pitch),
  };
}

type Modulus = (material: Material) => number;

interface At {
  readonly row: number;
  readonly share: number;
}

function rowBefore(xs: Float64Array, x: number): At {
  let row = 0;
  while (row < xs.length - 2 && xs[row + 1]! <= x) row++;
  return { row, share: (x - xs[row]!) / (xs[row + 1]! - xs[row]!) };
}

function between(a: SectionPart, b: SectionPart, share: number): SectionPart {
  const mix = (p: number, q: number) => p + share * (q - p);
  return {
    modulus: a.modulus,
    area: mix(a.area, b.area),
    firstMoment: mix(a.firstMoment, b.firstMoment),
    secondMoment: mix(a.secondMoment, b.secondMoment),
  };
}

function memberParts(slices: Slices, { members }: Layup, { row, share }: At, modulus: Modulus): SectionPart[] {
  return members.map(({ material }, m) => {
    const part = (at: number): SectionPart => ({
      modulus: modulus(material),
      area: slices.area[at]!,
      firstMoment: slices.firstMoment[at]!,
      secondMoment: slices.secondMoment[at]!,
    });
    return between(part(row * slices.members + m), part((row + 1) * slices.members + m), share);
  });
}

/**
 * What a chamber takes out of the section at `x` and its block puts in: members' stuff with the sign turned, then foam.
 */
function cutParts({ profile, depth }: Chamber, row: Row, x: number, fill: Material, modulus: Modulus): SectionPart[] {
  const { face } = row;
  const middle = (depth[0] + depth[1]) / 2;
  const s = (x - face.origin[0] - middle * face.inward[0]) / face.along[0];
  const span = spanAt(profile, s);
  if (!span) return [];
  // The section is square to the board, the depth square to the face.
  const slant = 1 / Math.abs(face.inward[1]);
  return row.members.map((member) => {
    const [near, far] = within(depth, depthsOf(member, row, s));
    return rectangle(modulus(fill) - modulus(member.material), (far - near) * slant, ...span);
  });
}

/** From the neutral axis to the deck or the bottom, whichever lies further, mm. */
function outerFibre({ axis }: Bending, { top, bottom, members }: Slices, row: number): number {
  let far = 0;
  for (let m = row * members; m < (row + 1) * members; m++) {
    if (top[m]! > bottom[m]!) far = Math.max(far, top[m]! - axis, axis - bottom[m]!);
  }
  return far;
}

/**
 * Sag under a load in the middle: the moment, times the moment of a unit load, over the stiffness, and the same of the
 * shear forces, summed along the board (unit-load method). The skins carry none of the shear: an even core between its
 * rests adds F L / 4 A G.
 * Source: H. G. Allen, "Analysis and Design of Structural Sandwich Panels" (1969); D. Zenkert, "An Introduction to
 * Sandwich Construction" (1997); from memory.
 */
function sagOf(places: readonly StiffPlace[], from: number, to: number): number {
  const curve = places.map(
    ({ x, stiffness, shear }) => (LOAD * (Math.min(x - from, to - x) / 2) ** 2) / stiffness + LOAD / 4 / shear,
  );
  return curve.slice(1).reduce((sum, c, i) => sum + ((c + curve[i]!) / 2) * (places[i + 1]!.x - places[i]!.x), 0);
}

function unevennessOf(places: readonly StiffPlace[], pitch: number): number {
  const window = Math.min(places.length - 1, Math.round(pitch / STEP));
  const changes = places.slice(window).map((_, i) => {
    const shares = places.slice(i, i + window + 1).map(({ share }) => share);
    return Math.max(...shares) - Math.min(...shares);
  });
  return changes.reduce((a, b) => a + b, 0) / changes.length;
}
