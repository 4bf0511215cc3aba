import type { FinBuildSpec } from './fin.js';
import type { Material } from './material.js';
import type { Stage } from './stage.js';

/** What goes over the bare board. Weights by area in g/m². */
export interface GlassSpec {
  /** Weights of the layers of cloth on each side, innermost first. */
  readonly deck: readonly number[];
  readonly bottom: readonly number[];
  /** How far each layer is drawn around the rail's widest line onto the other side, mm. */
  readonly lap: number;
  /** Weight of the resin that stays in a cloth, as a share of the cloth's. */
  readonly resin: number;
  /** Resin of the sealing coat. */
  readonly sealer: number;
  /** Resin of the hot coat, and the cloth that reinforces it; 0 for none. */
  readonly hotCoat: number;
  readonly hotCoatCloth: number;
}

/** How cloth and resin are worked. */
export interface LaminatingSpec {
  /** Which side is laminated first; the other's laps go over its. */
  readonly first: 'deck' | 'bottom';
  /** Width of the cloth on its roll, mm. */
  readonly clothWidth: number;
  /** From mixing a batch of resin to the last of it spread, minutes: by its own sheet. */
  readonly potLife: number;
  /** To wet out and squeegee one layer of one side, minutes; by its area where it is not given. */
  readonly minutesPerLayer?: number;
  /** Resin that stays in the pot, on tools and on the floor, as a share of what is meant. */
  readonly loss: number;
}

/**
 * A fin, drawn from a few measures: chord and thickness run straight from base to tip, its sections are of parabolic
 * arcs.
 */
export interface FinSpec {
  readonly name: string;
  /** Middle of its base, from the nose, mm. */
  readonly x: number;
  readonly base: number;
  readonly tip: number;
  readonly depth: number;
  readonly thickness: number;
  readonly tipThickness: number;
  /** kg/m³; what it is built of counts instead where that is given. */
  readonly density: number;
  /** What the scale said of one, kg, before it was set. */
  readonly weight?: number;
  /** How it is made, where the builder makes it: then its sections are foils, not parabolic arcs. */
  readonly build?: FinBuildSpec;
}

/** Anything else that is built in: a box, a plug, a handle, a deck pad. */
export interface FittingSpec {
  readonly name: string;
  readonly x: number;
  /** kg. */
  readonly weight: number;
}

/** What the scale said. */
export interface WeighingSpec {
  readonly stage: Stage;
  /** kg. */
  readonly weight: number;
  /** How far the scale may be off, kg. */
  readonly scale: number;
}

export type Range = readonly [least: number, most: number];

/** What the builder is after, and what may be changed to get there. What has no bounds stays as it is. */
export interface TargetSpec {
  /** Of the finished board, kg. */
  readonly weight?: number;
  /** Where the finished board balances, from the nose, mm. */
  readonly balance?: number;
  readonly deckSkin?: Range;
  readonly bottomSkin?: Range;
  readonly railWall?: Range;
  readonly web?: Range;
  /** Foams that could be had for the blocks. */
  readonly fills?: readonly Material[];
  /** Cloths that could be taken for every layer, g/m². */
  readonly cloths?: readonly number[];
}
