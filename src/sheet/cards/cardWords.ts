import type { Units } from '../../length/units.js';
import type { Shape } from '../drawing.js';
import { cardItems, type Item, type Letters } from './cardItems.js';
import type { CardOnBench } from './cardOnBench.js';
import { tabOf } from './cardTab.js';
import type { CornerCard } from './cornerCards.js';
import type { Lot } from './lot.js';
import { placeOn, type Box } from './roomOnCard.js';

/**
 * Heights of letters, the largest first, mm (ISO 3098-1:2015 series): a card is read in the hand, its number from
 * further.
 */
const SIZES: readonly Letters[] = [
  [7, 5, 5],
  [5, 5, 5],
  [5, 3.5, 5],
  [5, 3.5, 3.5],
  [5, 3.5, 2.5],
];

/**
 * What is written on a card, clear of its lines, in the largest letters that leave room for all of it; what has no room
 * in the smallest stands on a tab that is as wide as `tab`, mm.
 */
export function cardWords(card: CornerCard, lines: CardOnBench, units: Units): { words: Shape[]; tab: number } {
  let best: Written | undefined;
  for (const letters of SIZES) {
    const now = written(cardItems(card, units, letters), lines);
    if (!best || now.left.length < best.left.length) best = now;
    if (best.left.length === 0) break;
  }
  const tab = tabOf(
    best!.left.map(({ lots, beside }) => beside?.away ?? lots),
    lines,
  );
  return { words: [...best!.shapes, ...tab.words], tab: tab.width };
}

interface Written {
  readonly shapes: readonly Shape[];
  /** What has no room. */
  readonly left: readonly Item[];
}

/** Items one after the other, each where it has room in the first of its shapes that has any. */
function written(items: readonly Item[], lines: CardOnBench): Written {
  const [shapes, taken, left]: [Shape[], Box[], Item[]] = [[], [], []];
  for (const item of items) {
    const isPlaced = item.lots.some((lot: Lot) => {
      const at = placeOn(lines, lot, item.bands, taken, item.beside?.end);
      if (!at) return false;
      taken.push(at.box);
      shapes.push(...lot.draw(at.x, at.y));
      return true;
    });
    if (!isPlaced) left.push(item);
  }
  return { shapes, left };
}
