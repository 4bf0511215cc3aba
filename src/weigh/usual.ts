import type { Material } from '../job/spec/material.js';

/** A figure and its spread: one standard deviation either way, in the figure's unit. */
export interface Figure {
  readonly value: number;
  readonly spread: number;
}

/**
 * Figures of the work that no drawing holds. Two times out of three the shop lies within one spread.
 * Common practice, no source, unless said otherwise.
 */
export const USUAL = {
  /** Left over all around a glued blank, mm. */
  blankOver: { value: 8, spread: 4 },
  /** Left on all around a board that is "shaped": nearly, but not quite the finished one, mm. */
  leftOn: { value: 0.5, spread: 0.4 },
  /**
   * How far chambers come out larger all around than drawn, mm: a router wanders either way, and its depth is set by
   * eye.
   */
  routed: { value: 0, spread: 0.5 },
  /** Moisture-cure glue that stays in a joint, g/m². Industrial spread 100–250 g/m², from memory. */
  jointGlue: { value: 150, spread: 50 },
  /** The same on the faces of a block, which gets beads that foam up, not a film, g/m². */
  blockGlue: { value: 60, spread: 30 },
  /** How far a sealing coat comes out from what was meant, as a share of it; foam and end grain drink more or less. */
  sealer: { value: 1, spread: 0.3 },
  /**
   * How far a laminate's resin comes out from what was meant, as a share of it. Published wet-outs run from 0.67 to 1.2
   * of the cloth.
   */
  wetOut: { value: 1, spread: 0.15 },
  /** How far a hot coat comes out from what was meant, as a share of it. */
  hotCoat: { value: 1, spread: 0.25 },
  /** How far cloth weighs off from its name, as a share of it. */
  cloth: { value: 1, spread: 0.03 },
  /** Taken off by the last sanding, g/m². */
  sanded: { value: 40, spread: 20 },
  /** How far fins come out from their drawing and density, as a share. */
  fins: { value: 1, spread: 0.1 },
  /** How far fittings weigh off from what the job says, as a share. */
  fittings: { value: 1, spread: 0.05 },
} as const satisfies Record<string, Figure>;

/**
 * How far stock differs from its table where nobody weighed it: wood varies by a tenth (specific gravity, coefficient
 * of variation, Wood Handbook ch. 5, from memory), foam is sold by its least density and lies a little over it.
 */
const STOCK_SPREAD = 0.1;

/** One standard deviation of a material's density, kg/m³. */
export function densitySpread({ density, spread = STOCK_SPREAD }: Material): number {
  return density * spread;
}
