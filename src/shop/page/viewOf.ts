import type { ShopState } from '../log/state.js';
import type { WholeShop } from '../report/wholeShop.js';
import type { Shown, ShopOnPage } from './link/shopOnPage.js';

/** What every view gets: the shop, what it shows now, and both of them known. */
export interface ViewOf {
  readonly shop: ShopOnPage;
  readonly shown: Shown;
  readonly whole: WholeShop;
  readonly state: ShopState;
  readonly open: (block: string) => void;
}
