import type { Board } from '../board/board.js';
import { boardOf } from '../board/board.js';
import type { MouldedBlankSpec, RawStockSpec } from '../job/spec/stock.js';
import type { Layup } from '../layup/layup.js';
import type { Moments } from '../weigh/moments.js';
import { fittingOf, type Fit } from './fit.js';
import { lumberList, type LumberList } from './lumber/lumberList.js';
import { milledVolume } from './lumber/milledVolume.js';
import { profilesOf, type Profile } from './lumber/profile.js';
import type { Placement } from './placement.js';
import { sawnStrips, type SawnStrip } from './sawn.js';
import { sawnVolumes } from './sawnVolumes.js';
import { shortPlaces, type ShortPlace } from './short.js';
import { SIDES, type StockSide } from './skin.js';

/** From the raw stock to the glued blank: how the board lies in it, what is milled, what to buy, where it is short. */
export interface Stock {
  /** Absent where there is no moulded blank. */
  readonly blank?: InBlank;
  /** Stringers; strips too where they come from billets. Left to right. */
  readonly profiles: readonly Profile[];
  /** Absent where the job lists none. */
  readonly lumber?: LumberList;
  readonly billets?: LumberList;
  /** What each member holds as it is glued up, litres, as in `Layup.members`; undefined without stock listed for it. */
  readonly glued: readonly (Moments | undefined)[];
}

/** The board in a moulded blank. */
export interface InBlank {
  /** The blank itself, in its own frame. */
  readonly moulded: Board;
  readonly strips: readonly SawnStrip[];
  /** One for all strips, or one a strip where they may be slid against each other; with the strips it is of. */
  readonly fits: readonly (Fit & { readonly of: readonly string[] })[];
  /** Both halves are alike, and the right one was looked at. */
  readonly isAlike: boolean;
  readonly least: readonly Least[];
  readonly short: readonly ShortPlace[];
  /** Where strips slid by themselves would not be short: the strip, and its place against the others', mm. */
  readonly slides: readonly { readonly strip: string; readonly by: Placement; readonly least: number }[];
  /** What each strip holds as it is sawn, litres, where it stands in the glue-up. */
  readonly volumes: readonly Moments[];
  /** What the saw makes of the blank, litres. */
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

/** A pure function of the drawn board, its glue-up and what stock there is. */
export function stockOf(spec: RawStockSpec, board: Board, layup: Layup, isOneSided: boolean): Stock {
  const fromBillets = spec.billets.length > 0;
  const profiles = profilesOf(board, layup, spec.milling, ({ kind }) => kind === 'stringer' || fromBillets);
  const blank = spec.blank && inBlank(spec.blank, spec.allowance, board, layup, isOneSided);
  const of = (kind: 'strip' | 'stringer') => profiles.filter(({ member }) => member.kind === kind);
  return {
    ...(blank && { blank }),
    profiles,
    glued: layup.members.map((member) => {
      const strip = blank?.strips.findIndex((each) => each.member === member) ?? -1;
      if (strip >= 0) return blank!.volumes[strip];
      const profile = profiles.find((each) => each.member === member);
      const isListed = member.kind === 'strip' ? fromBillets : spec.lumber.length > 0;
      return profile && isListed ? milledVolume(profile) : undefined;
    }),
    ...(spec.lumber.length > 0 && { lumber: lumberList(of('stringer'), spec.lumber, spec.milling) }),
    ...(fromBillets && { billets: lumberList(of('strip'), spec.billets, { ...spec.milling, planing: 0 }) }),
  };
}

function inBlank(spec: MouldedBlankSpec, asked: number, board: Board, layup: Layup, isOneSided: boolean): InBlank {
  const blank = boardOf(spec.shape, [], STOCK_CHORD_ERROR);
  const strips = sawnStrips(layup, spec.kerf);
  const fitting = fittingOf(board, layup, blank, strips, isOneSided ? [0, 1] : [1]);
  const points = (strip?: number) =>
    Uint32Array.from(fitting.skin.vertex.keys()).filter((i) => strip === undefined || fitting.skin.strip[i] === strip);
  const whole = spec.place ? fitting.measured(spec.place, points()) : fitting.best(points());
  const names = strips.map(({ member }) => member.id);
  const looked = names.map((_, i) => i).filter((i) => points(i).length > 0);
  const alone = (i: number) => ({ ...fitting.best(points(i)), of: [names[i]!] });
  const fits = spec.slide ? looked.map(alone) : [{ ...whole, of: names }];
  const over = fits.map((fit) => masked(fit, (i) => fit.of.includes(names[fitting.skin.strip[i]!]!)));
  const short = over.flatMap((fit) => shortPlaces(fit, strips, asked)).sort((a, b) => a.over - b.over);
  const slides = spec.slide
    ? []
    : looked
        .filter((i) => short.some(({ strip }) => strip === names[i]))
        .map((i) => {
          const { placement, over: found } = alone(i);
          const least = Math.min(...Array.from(points(i), (point) => found[point]!));
          return { strip: names[i]!, least, by: against(placement, whole.placement) };
        })
        .filter(({ least }) => least >= asked);
  const volumes = sawnVolumes(blank, strips, whole.placement.along);
  const out = strips.map(({ moved }) => moved.at);
  return {
    moulded: blank,
    strips,
    fits,
    isAlike: !isOneSided,
    least: leastOfSides(over),
    short,
    slides,
    volumes,
    sawdust: blank.volume - volumes.reduce((sum, { amount }) => sum + amount, 0),
    width: { glued: blank.width + out.at(-1)! - out[0]!, moulded: blank.width },
  };
}

function masked(fit: Fit, counts: (i: number) => boolean): Fit {
  return { ...fit, over: fit.over.map((each, i) => (counts(i) ? each : Infinity)) };
}

function against(one: Placement, other: Placement): Placement {
  return { along: one.along - other.along, up: one.up - other.up, noseUp: one.noseUp - other.noseUp };
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
