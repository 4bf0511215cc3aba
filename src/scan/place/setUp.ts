import type { ScanFault } from '../fault.js';
import type { Triangles } from '../triangles.js';
import { alongAxes } from './axes.js';
import { medianOf, robustPolynomial } from './fitted.js';
import { heightsOf, MIDDLE, SHARES, type Heights } from './heights.js';
import { hornOf } from './horn.js';
import { after, moved, movedAll, shiftedBy, turnAbout, type Rigid } from './rigid.js';

/** A mark on the board: where it is in the file, mm there, and where it was measured on the board, mm. */
export interface Mark {
  readonly found: readonly [number, number, number];
  readonly x: number;
  readonly y: number;
}

/** What a builder says of how a mesh lies. */
export interface Turned {
  /** The tool has nose and tail the wrong way round, or deck and bottom. */
  readonly round?: boolean;
  readonly over?: boolean;
  /** Three marks or more. */
  readonly marks?: readonly Mark[];
}

/** How a mesh was laid, and how sure that is. */
export interface SetUp {
  /** From the frame of the file, mm, to the board's; `z` counts from the lowest bottom on the centreline. */
  readonly place: Rigid;
  /** Whether nose and tail, deck and bottom, tell themselves apart. */
  readonly isNoseSure: boolean;
  readonly isDeckSure: boolean;
  /** How far the marks are off where they were measured, at most, mm; absent where there are none. */
  readonly marksOff?: number;
}

/** Planes by which a mesh is laid, and the share of the length at each end that is left out. */
const PLANES = 160;
const ENDS = 0.03;
/** Corrections: each leaves a small part of what was off. */
const ROUNDS = 3;
/** The base line is taken over this share of the length to both sides of the middle of the volume. */
const BASE = 0.15;
/** Below these the ends, or the faces, are too much alike. */
const SURE_LIFT = 4;
const SURE_NOSE = 0.12;
/** Marks further off than this, mm, were measured or written wrongly. */
const MARKS_OFF = 15;

/**
 * Lays a mesh as a board lies: nose to tail along x, the plane of its best symmetry at y = 0, deck up. First along its
 * principal axes; then by the middles of its widths and the heights to both sides of them, least squares; then with its
 * base line level: the tangent to the bottom on the centreline under the middle of the volume, as a board rests on a
 * level floor. The higher end is the nose, unless the blunter end weighs against it; the ends curve toward the deck.
 */
export function setUp(mesh: Triangles, turned: Turned = {}): SetUp | ScanFault {
  const { triangles } = mesh;
  const positions = new Float64Array(mesh.positions.length);
  let place = alongAxes(mesh);
  const by = (rigid: Rigid) => (place = after(rigid, place));
  const look = () => {
    movedAll(place, mesh.positions, positions);
    return heightsOf({ positions, triangles }, planesOver(positions));
  };
  by(uprightOf(look()));
  const laid = look();
  by(uprightOf(laid));
  const deck = deckUp(laid);
  const nose = noseFirst(deck.isDown ? upsideDown(laid) : laid);
  if (deck.isDown !== (turned.over ?? false)) by(turnAbout(0, Math.PI));
  if (nose.isLast !== (turned.round ?? false)) by(turnAbout(2, Math.PI));
  const off = turned.marks && byMarks(turned.marks, place, by);
  if (off !== undefined && off > MARKS_OFF) return { kind: 'marks', why: 'apart', off };
  for (let round = 0; round < ROUNDS; round++) {
    const heights = look();
    by(turned.marks ? turnAbout(0, -tiltOf(heights).roll) : uprightOf(heights));
    by(turnAbout(1, pitchOf(heights)));
  }
  movedAll(place, mesh.positions, positions);
  let tip = Infinity;
  for (let k = 0; k < positions.length; k += 3) if (positions[k]! < tip) tip = positions[k]!;
  by(shiftedBy(-tip, 0, 0));
  return {
    place,
    isNoseSure: nose.isSure || turned.marks !== undefined,
    isDeckSure: deck.isSure || turned.marks !== undefined,
    ...(off !== undefined && { marksOff: off }),
  };
}

/** Lays marks, seen from above, onto where they were measured; gives how far they are off then at most, mm. */
function byMarks(marks: readonly Mark[], place: Rigid, by: (rigid: Rigid) => Rigid): number {
  const flat = marks.map(({ found }) => moved(place, found)).map(([x, y]) => [x, y, 0] as const);
  const laid = by(
    hornOf(
      flat,
      marks.map(({ x, y }) => [x, y, 0] as const),
    ),
  );
  return Math.max(
    ...marks.map(({ found, x, y }) => {
      const [a, b] = moved(laid, found);
      return Math.hypot(a - x, b - y);
    }),
  );
}

/** Heights of a board that lies on its deck, as they are when it is turned over about its length. */
function upsideDown({ xs, left, right, top, bottom }: Heights): Heights {
  const over = (face: Float64Array) => face.map((z) => -z);
  return { xs, left: over(right), right: over(left), top: over(bottom), bottom: over(top) };
}

function planesOver(positions: Float64Array): Float64Array {
  let [low, high] = [Infinity, -Infinity];
  for (let k = 0; k < positions.length; k += 3) {
    low = Math.min(low, positions[k]!);
    high = Math.max(high, positions[k]!);
  }
  const length = high - low;
  return Float64Array.from({ length: PLANES }, (_, i) => low + length * (ENDS + ((1 - 2 * ENDS) * (i + 0.5)) / PLANES));
}

/** Brings the middles of the widths to the centreline, and the heights to both sides of it to the same. */
function uprightOf(heights: Heights): Rigid {
  const { yaw, aside, roll } = tiltOf(heights);
  return after(turnAbout(0, -roll), after(shiftedBy(0, -aside, 0), turnAbout(2, -yaw)));
}

/**
 * How a board lies askew, radians and mm: about z, how far the centreline then lies to the right, and about x.
 */
function tiltOf({ xs, left, right, top, bottom }: Heights): { yaw: number; aside: number; roll: number } {
  const along: number[] = [];
  const middles: number[] = [];
  const slopes: number[] = [];
  const n = SHARES.length;
  xs.forEach((x, plane) => {
    const half = (right[plane]! - left[plane]!) / 2;
    if (!(half > 0)) return;
    along.push(x);
    middles.push((left[plane]! + right[plane]!) / 2);
    for (const face of [top, bottom])
      for (let i = 0; i < MIDDLE; i++) {
        const slope = (face[plane * n + n - 1 - i]! - face[plane * n + i]!) / (-2 * SHARES[i]! * half);
        if (Number.isFinite(slope)) slopes.push(slope);
      }
  });
  const [at, rise] = robustPolynomial(1, along, middles) as [number, number];
  const [roll] = robustPolynomial(0, new Float64Array(slopes.length), slopes) as [number];
  const yaw = Math.atan(rise);
  return { yaw, aside: at * Math.cos(yaw), roll: Math.atan(roll) };
}

/** How much the bottom on the centreline rises toward the tail under the middle of the volume, radians. */
function pitchOf({ xs, left, right, top, bottom }: Heights): number {
  const n = SHARES.length;
  let [moment, volume] = [0, 0];
  xs.forEach((x, plane) => {
    const size = (right[plane]! - left[plane]!) * (top[plane * n + MIDDLE]! - bottom[plane * n + MIDDLE]!);
    if (!(size > 0)) return;
    moment += x * size;
    volume += size;
  });
  const middle = moment / volume;
  const reach = BASE * (xs[xs.length - 1]! - xs[0]!);
  const along: number[] = [];
  const heights: number[] = [];
  xs.forEach((x, plane) => {
    const z = bottom[plane * n + MIDDLE]!;
    if (Math.abs(x - middle) > reach || !Number.isFinite(z)) return;
    along.push((x - middle) / reach);
    heights.push(z);
  });
  return Math.atan(robustPolynomial(2, along, heights)[1]! / reach);
}

/** Whether the deck looks down: the ends curve toward the deck, and the bottom is the flatter face. */
function deckUp({ xs, top, bottom }: Heights): { isDown: boolean; isSure: boolean } {
  const n = SHARES.length;
  const length = xs[xs.length - 1]! - xs[0]!;
  const centre = xs.map((_, plane) => (top[plane * n + MIDDLE]! + bottom[plane * n + MIDDLE]!) / 2);
  const mean = (isIn: (share: number) => boolean) =>
    medianOf(centre.filter((z, i) => isIn((xs[i]! - xs[0]!) / length) && Number.isFinite(z)));
  const chord = (mean((share) => share < 0.06) + mean((share) => share > 0.94)) / 2;
  const lift = chord - mean((share) => share > 0.4 && share < 0.6);
  const crown = (face: Float64Array) =>
    medianOf(
      xs
        .map((_, plane) => face[plane * n + MIDDLE]! - (face[plane * n + 1]! + face[plane * n + n - 2]!) / 2)
        .filter(Number.isFinite),
    );
  const isSure = Math.abs(lift) > SURE_LIFT;
  return { isDown: isSure ? lift < 0 : Math.abs(crown(top)) < Math.abs(crown(bottom)), isSure };
}

/** Whether the nose is the end of larger x: the end that rises more is the nose, and the blunter the tail. */
function noseFirst({ xs, left, right, bottom }: Heights): { isLast: boolean; isSure: boolean } {
  const n = SHARES.length;
  const zs = xs.map((_, plane) => bottom[plane * n + MIDDLE]!);
  const kept = [...xs.keys()].filter((i) => Number.isFinite(zs[i]!));
  const at = (share: number) => kept[Math.round(share * (kept.length - 1))]!;
  const rise = (from: number, to: number) => Math.abs(zs[at(from)]! - zs[at(to)]!);
  const width = (share: number) => right[at(share)]! - left[at(share)]!;
  const [first, last] = [rise(0, LAST_EIGHTH), rise(1, 1 - LAST_EIGHTH)];
  const higher = first + last === 0 ? 0 : (first - last) / (first + last);
  const blunter = (width(1) - width(0)) / (width(1) + width(0));
  const score = higher + blunter;
  return { isLast: score < 0, isSure: Math.abs(score) > SURE_NOSE };
}

/** Over this share of the length at each end the rise is compared. */
const LAST_EIGHTH = 0.125;
