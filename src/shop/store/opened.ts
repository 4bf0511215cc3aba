import type { Problem } from './problem.js';
import type { ShopStore } from './shopStore.js';

export type Opened =
  /** `notices` are things the builder must be told: a damaged file put aside, a drive without a write-ahead log. */
  | { readonly ok: true; readonly store: ShopStore; readonly notices: readonly string[] }
  | { readonly ok: false; readonly problem: Problem };
