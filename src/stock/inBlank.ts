import { boardOf, type Board } from '../board/board.js';
import type { MouldedBlankSpec } from '../job/spec/stock.js';
import type { Layup } from '../layup/layup.js';
import type { Moments } from '../weigh/moments.js';
import { cureOf, STOCK_CHORD_ERROR, type Cure } from './cure.js';
import type { Fit } from './fit.js';
import { placementOf } from './placementOf.js';
import type { SawnStrip } from './sawn.js';
import { sawnVolumes } from './sawnVolumes.js';
import type { ShortPlace } from './short.js';
import { SIDES, type StockSide } from './skin.js';
import type { Slide } from './smallestSlide.js';
import { stripFits, type StripFit } from './stripFits.js';
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
  /** What takes all short places away, and the slides of single strips that take theirs away. */
  readonly cure?: Cure;
  readonly slides: readonly (Slide & { readonly strip: string })[];
  /** What each strip holds as it is sawn, litres, where it stands in the glue-up. */
  readonly volumes: readonly Moments[];
  /**
   * What the saw makes of the blank, and what lies between strips that are sawn apart, litres; absent where they
   * overlap.
   */
  readonly sawdust?: number;
  /** The glued blank at its widest, the moulded one, and the board, mm. */
  readonly width: { readonly glued: number; readonly moulded: number; readonly board: number };
}

/** The least allowance on a side of the board, mm, and where, board frame. */
export interface Least {
  readonly side: StockSide;
  readonly over: number;
  readonly at: readonly [x: number, y: number, z: number];
}

/**
 * How the board lies in a moulded blank, and what is short.
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
  const laid = stripFits(moulded, spec, asked, board, layup, isOneSided);
  const { strips, fits, short, isAlike } = laid;
  const volumes = sawnVolumes(
    moulded,
    strips,
    strips.map(({ member }) => placementOf(fits, member.id).along),
  );
  const out = strips.map(({ moved }) => moved.at);
  const width = { glued: moulded.width + out.at(-1)! - out[0]!, moulded: moulded.width, board: board.width };
  const lacks = {
    wider: Math.max(0, board.width + 2 * asked - width.glued) / 2,
    longer: Math.max(0, board.length + 2 * asked - moulded.length),
  };
  const isEnough = short.length === 0 && lacks.wider + lacks.longer === 0;
  const cure = isEnough ? undefined : cureOf(spec, laid, lacks, asked, board, layup, isOneSided, step);
  const unfit = unfitFor(spec, laid, moulded, board, asked, width.glued);
  return {
    finished: board,
    asked,
    moulded,
    strips,
    fits,
    isAlike,
    least: leastOfSides(fits),
    short,
    unfit,
    ...(cure && { cure }),
    slides: [...new Set(short.map(({ strip }) => strip))].flatMap((strip) => {
      const found = laid.slide(strip, step);
      return found ? [{ strip, ...found }] : [];
    }),
    volumes,
    ...(unfit.every(({ why }) => why !== 'overlap') && {
      sawdust: Math.max(0, moulded.volume - volumes.reduce((all, { amount }) => all + amount, 0)),
    }),
    width,
  };
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
