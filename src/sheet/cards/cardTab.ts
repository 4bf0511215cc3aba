import type { Shape } from '../drawing.js';
import type { CardOnBench } from './cardOnBench.js';
import type { Lot } from './lot.js';
import { CLEAR } from './roomOnCard.js';

/** How much lower a tab is than its card, at its upper and at its lower edge, mm: nobody lays it to an edge. */
export const TAB_STEP = 1;

/** What stands on a tab beyond the inner side of a card, and how far it reaches, mm. */
export interface Tab {
  readonly words: readonly Shape[];
  readonly width: number;
}

/** Words, each in one of several shapes, in columns on a tab; no tab where there are none. */
export function tabOf(items: readonly (readonly Lot[])[], card: CardOnBench): Tab {
  if (items.length === 0) return { words: [], width: 0 };
  const { left, right, deck, bottom, inward } = card;
  const at = inward > 0 ? -1 : 0;
  const top = deck.at(at)![1] - TAB_STEP - CLEAR;
  const room = top - bottom.at(at)![1] - TAB_STEP - CLEAR;
  let off = CLEAR;
  const words = columnsOf(items, room).flatMap((lots) => {
    const wide = Math.max(...lots.map(({ width }) => width));
    const x = (inward > 0 ? right : left) + inward * (off + wide / 2);
    off += wide + CLEAR;
    let y = top;
    return lots.flatMap((lot) => {
      const shapes = lot.draw(x, y - lot.height / 2);
      y -= lot.height + CLEAR;
      return shapes;
    });
  });
  return { words, width: off };
}

/** Each in its narrowest shape that is low enough, under the one before while there is room. */
function columnsOf(items: readonly (readonly Lot[])[], room: number): Lot[][] {
  const columns: Lot[][] = [];
  const tall = (lots: readonly Lot[]) => lots.reduce((sum, { height }) => sum + height + CLEAR, 0);
  for (const lots of items) {
    const low = lots.filter(({ height }) => height <= room);
    const lot = low.reduce((a, b) => (b.width < a.width ? b : a), low[0] ?? lots[0]!);
    const last = columns.at(-1);
    if (last && tall(last) + lot.height <= room) last.push(lot);
    else columns.push([lot]);
  }
  return columns;
}
