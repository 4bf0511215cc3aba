import { boardOf, type Board } from '../board/board.js';
import type { MouldedBlankSpec, StripSpec } from '../job/spec/stock.js';
import type { LaidMember, Layup } from '../layup/layup.js';
import type { Moments } from '../weigh/moments.js';
import { fittingOf, type Fit } from './fit.js';
import { sawnStrips, type SawnStrip } from './sawn.js';
import { sawnVolumes } from './sawnVolumes.js';
import { shortPlaces, type ShortPlace } from './short.js';
import { SIDES, type StockSide } from './skin.js';
import { lyingIn, NOT_SLID, slidAgainst, type Slid } from './slid.js';
import type { Slide } from './smallestSlide.js';
import { unfitFor, type Unfit } from './unfit.js';

/** The board in a moulded blank. */
export interface InBlank {
  /** The finished board, and what is to stand over it everywhere, mm. */
  readonly finished: Board;
  readonly asked: number;
  /** The blank itself, in its own frame. */
  readonly moulded: Board;
  readonly strips: readonly SawnStrip[];
  /** One for all strips that are not slid against each other, one for each that is. */
  readonly fits: readonly StripFit[];
  /** Both halves of board and blank are alike, and the right one was looked at. */
  readonly isAlike: boolean;
  readonly least: readonly Least[];
  readonly short: readonly ShortPlace[];
  /** What keeps strips from being sawn from it at all. */
  readonly unfit: readonly Unfit[];
  /** The smallest slide against the others with which a short strip is short no more; none where no slide does it. */
  readonly slides: readonly (Slide & { readonly strip: string })[];
  /** What each strip holds as it is sawn, litres, where it stands in the glue-up. */
  readonly volumes: readonly Moments[];
  /** What the saw makes of the blank, and what lies between strips that are sawn apart, litres. */
  readonly sawdust: number;
  /** The glued blank at its widest, and the moulded one, mm. */
  readonly width: { readonly glued: number; readonly moulded: number };
}

/** The board in the strips that lie alike: both of a pair where left and right are alike. */
export interface StripFit extends Fit {
  readonly of: readonly string[];
  /** How they are slid, and against what; absent where the others are slid against them. */
  readonly slid?: { readonly by: Slid; readonly against: readonly string[] };
}

/** The least allowance on a side of the board, mm, and where, board frame. */
export interface Least {
  readonly side: StockSide;
  readonly over: number;
  readonly at: readonly [x: number, y: number, z: number];
}

/** How far the mesh of raw stock may lie from its surface, mm: no moulded foam is true to less. */
const STOCK_CHORD_ERROR = 0.2;

/**
 * How the board lies in a moulded blank. Strips that the builder slides lie as they are slid against the others, and
 * these as the builder lays the board in them, or best without those that are slid. Where each is to be slid, it lies
 * best in every one, and what is told is how the others are slid against the one next to the centre.
 *
 * @param asked what is to stand over the board everywhere, mm
 * @param step the finest that a slide is told in, mm
 */
export function inBlank(
  spec: MouldedBlankSpec,
  asked: number,
  board: Board,
  layup: Layup,
  isOneSided: boolean,
  step: number,
): InBlank {
  const moulded = boardOf(spec.shape, [], STOCK_CHORD_ERROR);
  const isAlike = !isOneSided && spec.strips.every((one) => isSaidAlike(one, spec.strips));
  const said = (member: LaidMember) => saidOf(spec.strips, member, isAlike);
  const strips = sawnStrips(layup, spec.kerf, (member) => said(member)?.sawnAt);
  const fitting = fittingOf(board, layup, moulded, strips, isAlike ? [1] : [0, 1]);
  const { skin } = fitting;
  const on = (wanted: (strip: number) => boolean) =>
    Uint32Array.from(skin.vertex.keys()).filter((i) => wanted(skin.strip[i]!));
  const names = strips.map(({ member }) => member.id);
  const points = (of: readonly number[]) => on((strip) => of.includes(strip));
  /** Of a pair that is alike the right one is looked at, and stands for both. */
  const looked = names.flatMap((_, i) => (points([i]).length > 0 ? [i] : []));
  const called = (of: readonly number[]) => names.filter((name) => of.some((i) => isPair(name, names[i]!, isAlike)));
  const slid = strips.map(({ member }) => said(member)?.slid);
  const free = looked.filter((i) => !slid[i]);
  /** What the others are slid against: all that are not slid, or the one next to the centre where each is to be. */
  const middle = spec.slide ? [...free].sort((a, b) => outOf(strips[a]!) - outOf(strips[b]!)).slice(0, 1) : free;
  const resting = middle.length > 0 ? middle : looked;
  const laid = spec.place ? fitting.measured(spec.place, points(resting)) : fitting.best(points(resting));
  const slidFrom = (i: number, fit: Fit, by: Slid): StripFit => ({
    ...fit,
    of: called([i]),
    slid: { by, against: called(middle) },
  });
  const fits = [
    ...(middle.length > 0 ? [{ ...laid, of: called(middle) }] : []),
    ...free
      .filter((i) => !middle.includes(i))
      .map((i) => {
        const fit = fitting.best(points([i]));
        return slidFrom(i, fit, slidAgainst(laid.placement, fit.placement, board.length));
      }),
    ...looked.flatMap((i) => {
      const by = slid[i];
      return by ? [slidFrom(i, fitting.measured(lyingIn(laid.placement, by, board.length), points([i])), by)] : [];
    }),
  ];
  const over = fits.map((fit) => masked(fit, (i) => fit.of.includes(names[skin.strip[i]!]!)));
  const short = over.flatMap((fit) => shortPlaces(fit, strips, asked)).sort((a, b) => a.over - b.over);
  /** Slid alone, so that the others lie where they lie best without it. */
  const slides = looked
    .filter((i) => (slid[i] || !spec.slide) && short.some(({ strip }) => strip === names[i]))
    .flatMap((i) => {
      const others = middle.filter((each) => each !== i);
      if (others.length === 0) return [];
      const lies = slid[i] || spec.place ? laid.placement : fitting.best(points(others)).placement;
      const found = fitting.slide(points([i]), lies, slid[i] ?? NOT_SLID, asked, step);
      return found ? [{ strip: names[i]!, ...found }] : [];
    });
  const volumes = sawnVolumes(moulded, strips, laid.placement.along);
  const out = strips.map(({ moved }) => moved.at);
  return {
    finished: board,
    asked,
    moulded,
    strips,
    fits,
    isAlike,
    least: leastOfSides(over),
    short,
    unfit: unfitFor(spec, strips, moulded, laid.placement, board.length, isAlike, middle.length === 0),
    slides,
    volumes,
    sawdust: moulded.volume - volumes.reduce((all, { amount }) => all + amount, 0),
    width: { glued: moulded.width + out.at(-1)! - out[0]!, moulded: moulded.width },
  };
}

/** What the builder says of a strip; of a pair that is alike it is said of the one or the other. */
function saidOf(said: readonly StripSpec[], { id }: LaidMember, isAlike: boolean): StripSpec | undefined {
  return said.find(({ strip }) => strip === id) ?? said.find(({ strip }) => isPair(strip, id, isAlike));
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

function masked(fit: StripFit, counts: (i: number) => boolean) {
  return { ...fit, over: fit.over.map((each, i) => (counts(i) ? each : Infinity)) };
}

function leastOfSides(fits: readonly Fit[]): Least[] {
  return SIDES.flatMap((side, code): Least[] => {
    let found: Least | undefined;
    for (const { skin, over } of fits) {
      over.forEach((each, i) => {
        if (skin.side[i] !== code || each >= (found?.over ?? Infinity)) return;
        found = { side, over: each, at: [skin.at[3 * i]!, skin.at[3 * i + 1]!, skin.at[3 * i + 2]!] };
      });
    }
    return found ? [found] : [];
  });
}
