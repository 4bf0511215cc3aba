import type { Grid } from '../board/grid.js';
import type { Job } from '../job/job.js';
import { USUAL_GLASS, USUAL_LAMINATING } from '../job/usual-glass.js';
import { KG_PER_OUNCE, MM_PER_INCH } from '../length/units.js';
import { poured } from '../length/weight.js';
import type { Bare } from '../weigh/bare.js';
import { girthAt, girthsOf, type Girth } from './cloth.js';
import { cutOf } from './cut.js';

/** Sealing, lamination and hot coat of a board: areas m², lengths mm, weights kg, times minutes. */
export interface Finish {
  /** Of deck and bottom together. */
  readonly area: number;
  readonly sealer: Coat;
  /** In the order in which they are laminated; a side without cloth is none. */
  readonly sides: readonly LaminatedSide[];
  readonly hotCoat: Coat;
  /** The cloth in the hot coat: cut to the widest line of the rail on both sides. Absent where there is none. */
  readonly coatCloth?: number;
  /** So much of its roll, mm. */
  readonly coatLength: number;
  /** Cloth to buy, the heaviest first: so much of the roll of each weight. */
  readonly cloths: readonly { readonly cloth: number; readonly length: number }[];
  /** Resin to buy for all of it, what stays in the pot included. */
  readonly resin: number;
}

/** Resin that is spread, what is mixed for it, and in how many batches of as much each, as the scale shows it. */
export interface Coat {
  readonly resin: number;
  readonly mix: number;
  readonly batches: number;
}

export interface LaminatedSide extends Coat {
  readonly side: 'deck' | 'bottom';
  /** g/m², innermost first. */
  readonly layers: readonly number[];
  /** Of one layer with its laps, m². */
  readonly area: number;
  /** To wet out all layers. */
  readonly minutes: number;
  /** The length of one layer with its laps over nose and tail, and its greatest width, mm. */
  readonly cut: { readonly length: number; readonly width: number };
  /** How many widths of the roll lie beside each other. */
  readonly widths: number;
  /** Laps included, at stations from nose to tail: from the centreline to the cut. */
  readonly outline: readonly Girth[];
  /** The side itself, to the widest line of the rail, without laps. */
  readonly girths: readonly Girth[];
  /** From the centreline to the cut, at any place along the tape from the nose, mm. */
  readonly cutOut: Readonly<Record<'left' | 'right', (along: number) => number>>;
}

/** Wetting out and squeegeeing, minutes to a square metre of one layer. Common practice, no source. */
const PACE = 12;
/** More in one pot heats itself and is gone before its time, kg. Common practice, no source: resin's sheets differ. */
const MOST_IN_POT = { mm: 0.3, in: 10.5 * KG_PER_OUNCE } as const;
/** Widths of a roll that lie beside each other overlap by this, mm. Common practice, no source. */
export const OVERLAP = 25;
/** A thin coat is drawn out faster than a cloth is wetted, minutes to a square metre. Common practice, no source. */
const COAT_PACE = 6;
/** Between stations at which the cut of a cloth is told, mm. */
const STATIONS = { mm: 250, in: 10 * MM_PER_INCH } as const;

/** How the bare board is finished, by the job's cloth and resin. A pure function of the board as it is. */
export function finishOf({
  board,
  bare,
  job,
}: {
  readonly board: { readonly grid: Grid; readonly length: number };
  readonly bare: Bare;
  readonly job: Pick<Job, 'glass' | 'laminating' | 'units'>;
}): Finish {
  const { glass = USUAL_GLASS, laminating = USUAL_LAMINATING } = job;
  const { deck, bottom, apexLine } = bare.skin;
  const area = deck.amount + bottom.amount;
  const coat = (resin: number, minutes: number): Coat => {
    const mix = resin * (1 + laminating.loss);
    const most = MOST_IN_POT[job.units];
    const batches = Math.max(1, Math.ceil(minutes / laminating.potLife - 1e-9), Math.ceil(mix / most - 1e-9));
    return { resin, mix: batches * poured(mix / batches, job.units), batches };
  };
  const second = laminating.first === 'deck' ? 'bottom' : 'deck';
  const order: readonly ('deck' | 'bottom')[] = [laminating.first, second];
  const sides = order.flatMap((side): LaminatedSide[] => {
    const layers = glass[side];
    if (layers.length === 0) return [];
    const one = bare.skin[side].amount + (apexLine.amount * glass.lap) / 1000;
    const minutes = layers.length * (laminating.minutesPerLayer ?? PACE * one);
    const resin = (one * layers.reduce((sum, cloth) => sum + cloth, 0) * glass.resin) / 1000;
    const girths = girthsOf(board.grid, side);
    const width = Math.max(...girths.map(({ left, right }) => left + right)) + 2 * glass.lap;
    const cut = { left: cutOf(girths, 'left', glass.lap), right: cutOf(girths, 'right', glass.lap) };
    const at = stationsOf(board.length, STATIONS[job.units]).map((x) => girthAt(girths, x));
    return [
      {
        side,
        layers,
        area: one,
        minutes,
        ...coat(resin, minutes),
        cut: { length: girths.at(-1)!.along + 2 * glass.lap, width },
        widths: widthsOf(width, laminating.clothWidth),
        outline: at.map((girth) => ({ ...girth, left: cut.left(girth.along), right: cut.right(girth.along) })),
        girths,
        cutOut: cut,
      },
    ];
  });
  const coatMinutes = COAT_PACE * area;
  const sealer = coat((area * glass.sealer) / 1000, coatMinutes);
  const hotCoat = coat((area * (glass.hotCoat + glass.hotCoatCloth * glass.resin)) / 1000, coatMinutes);
  const coatLength = coatClothLength(board.grid, laminating.clothWidth);
  const all = [sealer, hotCoat, ...sides];
  return {
    area,
    sealer,
    sides,
    hotCoat,
    ...(glass.hotCoatCloth > 0 && { coatCloth: glass.hotCoatCloth }),
    coatLength,
    cloths: clothsOf(sides, glass.hotCoatCloth, coatLength),
    resin: all.reduce((sum, { mix }) => sum + mix, 0),
  };
}

function widthsOf(width: number, roll: number): number {
  return width <= roll ? 1 : Math.ceil((width - OVERLAP) / (roll - OVERLAP));
}

function stationsOf(length: number, step: number): number[] {
  return [...Array.from({ length: Math.ceil(length / step) }, (_, i) => i * step), length];
}

/** Two pieces, deck and bottom, without laps, mm of roll. */
function coatClothLength(grid: Grid, roll: number): number {
  return (['deck', 'bottom'] as const).reduce((sum, side) => {
    const girths = girthsOf(grid, side);
    const width = Math.max(...girths.map(({ left, right }) => left + right));
    return sum + widthsOf(width, roll) * girths.at(-1)!.along;
  }, 0);
}

/** Length of roll of each weight of cloth, mm, the heaviest first. */
function clothsOf(sides: readonly LaminatedSide[], coatCloth: number, coatLength: number): Finish['cloths'] {
  const lengths = new Map<number, number>();
  const take = (cloth: number, length: number) => lengths.set(cloth, (lengths.get(cloth) ?? 0) + length);
  for (const { layers, cut, widths } of sides) for (const cloth of layers) take(cloth, widths * cut.length);
  if (coatCloth > 0) take(coatCloth, coatLength);
  return [...lengths].map(([cloth, length]) => ({ cloth, length })).sort((a, b) => b.cloth - a.cloth);
}
