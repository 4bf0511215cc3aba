import { GLASS_AND_EPOXY } from '../job/usual-glass.js';
import type { FinSpec } from '../job/spec/finish.js';
import { filletCloth, filletVolume } from './fillet.js';
import { laminateDensity } from './panel.js';

/** What is done at the base of one fin once it stands: the round, and the cloth over it. */
export interface FinBase {
  readonly radius: number;
  readonly of: 'rope' | 'resin';
  /** Of the round, cured, kg; its dry fibre where it is of rope, and its resin. */
  readonly round: number;
  readonly fibre: number;
  readonly resin: number;
  /** From the first layer on, each with a strip for either side. */
  readonly strips: readonly FinStrip[];
  /** All together, kg. */
  readonly weight: number;
}

export interface FinStrip {
  /** g/m². */
  readonly cloth: number;
  /** mm: along the base, and from the fin over the round onto the board. */
  readonly length: number;
  readonly width: number;
  /** Of the strips of both sides, dry, and the resin that stays in them, kg. */
  readonly dry: number;
  readonly resin: number;
}

/** A rope of loose rovings wetted by hand: glass takes so much of its volume. Common practice, no source. */
const ROPE_FIBRE = 0.3;
/** Each layer covers the edge of the one before by this, mm. Common practice, no source. */
const STEP = 10;

/** @param wetOut weight of the resin that stays in a cloth laid by hand, as a share of the cloth's */
export function baseOf(fin: FinSpec, wetOut: number): FinBase {
  const { radius, of, cloth, reach } = fin.build!.fillet!;
  const volume = filletVolume(fin) / 1e9;
  const rope = { ...GLASS_AND_EPOXY, fibre: of === 'rope' ? ROPE_FIBRE : 0 };
  const round = volume * laminateDensity(rope);
  const fibre = volume * rope.fibre * rope.fibreDensity;
  const strips = cloth.map((weight, i): FinStrip => {
    const beyond = reach + i * STEP;
    const width = filletCloth(radius, beyond);
    const length = fin.base + 2 * (radius + beyond);
    const both = (2 * weight * length * width) / 1e9;
    return { cloth: weight, length, width, dry: both, resin: both * wetOut };
  });
  const dry = strips.reduce((sum, strip) => sum + strip.dry, 0);
  return { radius, of, round, fibre, resin: round - fibre + dry * wetOut, strips, weight: round + dry * (1 + wetOut) };
}
