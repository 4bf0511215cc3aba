import { boardOf, type Board } from '../board/board.js';
import type { MouldedBlankSpec, StripSpec } from '../job/spec/stock.js';
import type { LaidMember, Layup } from '../layup/layup.js';
import type { Moments } from '../weigh/moments.js';
import { fittingOf, type Fit } from './fit.js';
import type { Placement } from './placement.js';
import { sawnStrips, type SawnStrip } from './sawn.js';
import { sawnVolumes } from './sawnVolumes.js';
import { shortPlaces, type ShortPlace } from './short.js';
import { SIDES, type StockSide } from './skin.js';
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
  /** One for all strips that are not slid against each other, one for each that is; with the strips it is of. */
  readonly fits: readonly (Fit & { readonly of: readonly string[] })[];
  /** Both halves are alike, and the right one was looked at. */
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

/** The least allowance on a side of the board, mm, and where, board frame. */
export interface Least {
  readonly side: StockSide;
  readonly over: number;
  readonly at: readonly [x: number, y: number, z: number];
}

/** How far the mesh of raw stock may lie from its surface, mm: no moulded foam is true to less. */
const STOCK_CHORD_ERROR = 0.2;
const NOT_SLID: Placement = { along: 0, up: 0, noseUp: 0 };

/**
 * How the board lies in a moulded blank. Strips that the builder slides lie as they are slid against the best placement
 * of the others.
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
  const isAlike = !isOneSided;
  const said = (member: LaidMember) => saidOf(spec.strips, member, isAlike);
  const strips = sawnStrips(layup, spec.kerf, (member) => said(member)?.sawnAt);
  const fitting = fittingOf(board, layup, moulded, strips, isOneSided ? [0, 1] : [1]);
  const { skin } = fitting;
  const on = (wanted: (strip: number) => boolean) =>
    Uint32Array.from(skin.vertex.keys()).filter((i) => wanted(skin.strip[i]!));
  const names = strips.map(({ member }) => member.id);
  const slid = strips.map(({ member }) => said(member)?.slid);
  const looked = names.map((_, i) => i).filter((i) => on((strip) => strip === i).length > 0);
  const free = on((strip) => !slid[strip]);
  const counts = free.length > 0 ? free : on(() => true);
  const whole = spec.place ? fitting.measured(spec.place, counts) : fitting.best(counts);
  const alone = (i: number) => ({ ...fitting.best(on((strip) => strip === i)), of: [names[i]!] });
  const asSlid = (i: number) => ({
    ...fitting.measured(
      sum(whole.placement, slid[i]!),
      on((strip) => strip === i),
    ),
    of: [names[i]!],
  });
  const fits = [
    ...(spec.slide
      ? looked.filter((i) => !slid[i]).map(alone)
      : [{ ...whole, of: names.filter((_, i) => !slid[i]) }].filter(({ of }) => of.length > 0)),
    ...looked.filter((i) => slid[i]).map(asSlid),
  ];
  const over = fits.map((fit) => masked(fit, (i) => fit.of.includes(names[skin.strip[i]!]!)));
  const short = over.flatMap((fit) => shortPlaces(fit, strips, asked)).sort((a, b) => a.over - b.over);
  const slides = spec.slide
    ? []
    : looked
        .filter((i) => short.some(({ strip }) => strip === names[i]))
        .flatMap((i) => {
          const now = slid[i] ?? NOT_SLID;
          const points = on((strip) => strip === i);
          const found = fitting.slide(points, sum(whole.placement, now), asked, step);
          return found ? [{ strip: names[i]!, least: found.least, by: sum(now, found.by) }] : [];
        });
  const volumes = sawnVolumes(moulded, strips, whole.placement.along);
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
    unfit: unfitFor(spec, strips, moulded, whole.placement, board.length, isAlike),
    slides,
    volumes,
    sawdust: moulded.volume - volumes.reduce((all, { amount }) => all + amount, 0),
    width: { glued: moulded.width + out.at(-1)! - out[0]!, moulded: moulded.width },
  };
}

/** What the builder says of a strip; of a pair that is alike it is said of the one or the other. */
function saidOf(said: readonly StripSpec[], { id }: LaidMember, isAlike: boolean): StripSpec | undefined {
  const mirror = id.startsWith('MR') ? id.replace('MR', 'ML') : id.replace('ML', 'MR');
  return said.find(({ strip }) => strip === id) ?? (isAlike ? said.find(({ strip }) => strip === mirror) : undefined);
}

function masked(fit: Fit & { readonly of: readonly string[] }, counts: (i: number) => boolean) {
  return { ...fit, over: fit.over.map((each, i) => (counts(i) ? each : Infinity)) };
}

function sum(one: Placement, other: Placement): Placement {
  return { along: one.along + other.along, up: one.up + other.up, noseUp: one.noseUp + other.noseUp };
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
