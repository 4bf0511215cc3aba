import type { Pace } from './pace.js';
import type { Refit } from './refit.js';
import type { ShopState } from './state.js';
import type { TrackedBlock } from './trackedBlock.js';

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
  readonly refits: Readonly<Record<string, Exclude<Refit, { kind: 'fits' }>>>;
  readonly pace: Pace;
  /** The server's clock, ms. */
  readonly now: number;
  readonly role: 'owner' | 'phone';
  /** Whether phones can be let in. */
  readonly shared: boolean;
}
