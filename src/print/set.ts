/** What the papers hold, as `sheet` makes it. */
export type * from '../sheet/pages.js';
export type { TableRow as Row } from '../sheet/pages.js';
