import type { Pace } from './pace.js';
import type { Misfit } from '../fit/refit.js';
import type { BlockState, GlueTimer, ShopState } from '../log/state.js';
import type { TrackedBlock } from '../log/trackedBlock.js';

/** All that a page must know, as the server tells it. */
export interface WholeShop {
  readonly job: string;
  /** How sizes are written. */
  readonly units: 'mm' | 'in';
  /** Number of the plan the blocks are from. */
  readonly plan: number;
  readonly blocks: readonly TrackedBlock[];
  readonly state: ShopState;
  /** Blocks in hand that the plan of today no longer agrees with, by number. */
  readonly refits: ReadonlyMap<string, Misfit>;
  readonly pace: Pace;
  /** The server's clock, ms. */
  readonly now: number;
  readonly role: 'owner' | 'phone';
  /** Whether phones can be let in. */
  readonly shared: boolean;
}

/** The same as it goes through JSON, which has no maps: each as a list of its entries. */
export interface ToldShop extends Omit<WholeShop, 'state' | 'refits'> {
  readonly state: Omit<ShopState, 'blocks' | 'timers'> & {
    readonly blocks: readonly (readonly [string, BlockState])[];
    readonly timers: readonly (readonly [string, GlueTimer])[];
  };
  readonly refits: readonly (readonly [string, Misfit])[];
}

export function toldShop({ state, refits, ...whole }: WholeShop): ToldShop {
  return { ...whole, state: { ...state, blocks: [...state.blocks], timers: [...state.timers] }, refits: [...refits] };
}

export function shopFrom({ state, refits, ...whole }: ToldShop): WholeShop {
  const { blocks, timers, ...rest } = state;
  return { ...whole, state: { ...rest, blocks: new Map(blocks), timers: new Map(timers) }, refits: new Map(refits) };
}
