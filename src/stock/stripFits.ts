import type { Board } from '../board/board.js';
import type { StripSpec } from '../job/spec/stock.js';
import type { LaidMember, Layup } from '../layup/layup.js';
import { fittingOf, type Fit } from './fit.js';
import type { Placement } from './placement.js';
import { sawnStrips, type SawnStrip } from './sawn.js';
import { shortPlaces, type ShortPlace } from './short.js';
import { lyingIn, NOT_SLID, slidAgainst, type Slid } from './slid.js';
import type { Slide } from './smallestSlide.js';

/** The board in the strips that lie alike: both of a pair where left and right are alike. */
export interface StripFit extends Fit {
  readonly of: readonly string[];
  /** How they are slid, and against what; absent where the others are slid against them. */
  readonly slid?: { readonly by: Slid; readonly against: readonly string[] };
}

export interface StripFits {
  readonly strips: readonly SawnStrip[];
  readonly isAlike: boolean;
  /** One for all strips that are not slid against each other, one for each that is. */
  readonly fits: readonly StripFit[];
  readonly short: readonly ShortPlace[];
  /** No strip is left for the others to be slid against. */
  readonly areAllSlid: boolean;
  /** The smallest slide of a strip by which it is short no more, in whole steps, mm. */
  slide(strip: string, step: number): Slide | undefined;
}

/** What is said of a moulded blank beside its shape, as in `MouldedBlankSpec`. */
export interface Laying {
  readonly kerf: number;
  readonly place?: Placement;
  readonly slide: boolean;
  readonly strips: readonly StripSpec[];
}

/**
 * How the board lies in the strips of a moulded blank. Strips that the builder slides lie as they are slid against the
 * others, and these as the builder lays the board in them, or best without those that are slid. Where each is to be
 * slid, it lies best in every one, and what is told is how the others are slid against the one next to the centre.
 *
 * @param asked what is to stand over the board everywhere, mm
 */
export function stripFits(
  moulded: Board,
  { kerf, place, slide, strips: all }: Laying,
  asked: number,
  board: Board,
  layup: Layup,
  isOneSided: boolean,
): StripFits {
  const isAlike = !isOneSided && all.every((one) => isSaidAlike(one, all));
  const said = ({ id }: LaidMember) =>
    all.find(({ strip }) => strip === id) ?? all.find(({ strip }) => isPair(strip, id, isAlike));
  const strips = sawnStrips(layup, kerf, (member) => said(member)?.sawnAt);
  const fitting = fittingOf(board, layup, moulded, strips, asked, isAlike ? [1] : [0, 1]);
  const { skin } = fitting;
  const names = strips.map(({ member }) => member.id);
  const points = (of: readonly number[]) =>
    Uint32Array.from(skin.strip.keys()).filter((i) => of.includes(skin.strip[i]!));
  /** Of a pair that is alike the right one is looked at, and stands for both. */
  const looked = [...new Set(skin.strip)].sort((a, b) => a - b);
  const called = (of: readonly number[]) => names.filter((name) => of.some((i) => isPair(name, names[i]!, isAlike)));
  const slid = strips.map(({ member }) => said(member)?.slid);
  const free = looked.filter((i) => !slid[i]);
  /** What the others are slid against: all that are not slid, or the one next to the centre where each is to be. */
  const resting = slide ? [...free].sort((a, b) => outOf(strips[a]!) - outOf(strips[b]!)).slice(0, 1) : free;
  const those = points(resting.length > 0 ? resting : looked);
  const laid = place ? fitting.measured(place, those) : fitting.best(those);
  const slidFrom = (i: number, fit: Fit, by: Slid): StripFit => ({
    ...fit,
    of: called([i]),
    slid: { by, against: called(resting) },
  });
  const fits = [
    ...(resting.length > 0 ? [{ ...laid, of: called(resting) }] : []),
    ...free
      .filter((i) => !resting.includes(i))
      .map((i) => {
        const fit = fitting.best(points([i]));
        return slidFrom(i, fit, slidAgainst(laid.placement, fit.placement, board.length));
      }),
    ...looked.flatMap((i) => {
      const by = slid[i];
      return by ? [slidFrom(i, fitting.measured(lyingIn(laid.placement, by, board.length), points([i])), by)] : [];
    }),
  ].map((fit) => ({
    ...fit,
    over: fit.over.map((each, i) => (fit.of.includes(names[skin.strip[i]!]!) ? each : Infinity)),
  }));
  return {
    strips,
    isAlike,
    fits,
    short: fits.flatMap((fit) => shortPlaces(fit, strips, asked)).sort((a, b) => a.over - b.over),
    areAllSlid: resting.length === 0,
    slide(strip, step) {
      const i = names.indexOf(strip);
      const others = resting.filter((each) => each !== i);
      if (others.length === 0 || (slide && !slid[i])) return undefined;
      // Slid alone, so that the others lie as they lie best without it.
      const lies = slid[i] || place ? laid : fitting.best(points(others));
      return fitting.slide(points([i]), lies.placement, slid[i] ?? NOT_SLID, step);
    },
  };
}

const twinOf = (id: string) => (id.startsWith('MR') ? id.replace('MR', 'ML') : id.replace('ML', 'MR'));
const isPair = (one: string, other: string, isAlike: boolean) => one === other || (isAlike && twinOf(one) === other);

/** Whether the builder says the same of its mirror image, or nothing. */
function isSaidAlike(one: StripSpec, all: readonly StripSpec[]): boolean {
  const twin = all.find(({ strip }) => strip === twinOf(one.strip));
  return !twin || JSON.stringify({ ...twin, strip: '' }) === JSON.stringify({ ...one, strip: '' });
}

/** How far its inner edge lies from the centre at the nose tip, mm. */
function outOf({ left, right, member }: SawnStrip): number {
  return member.side === 'C' ? 0 : Math.abs((member.side === 'R' ? left : right)?.at ?? 0);
}
