import { heightAt } from '../../chamber/edges.js';
import type { CardOnBench } from './cardOnBench.js';
import type { Lot } from './lot.js';

/** Kept free between words and any line, mm. */
export const CLEAR = 1.5;
/** And between words and others, mm. */
const APART = 1;
/** Steps in which a place is looked for, and in which lines are looked at under it, mm. */
const STEP = 1;
const LOOK = 2;

/** Where on a card words may stand: between deck line and chamber, in the chamber, between chamber and bottom line. */
export const BANDS = ['inside', 'deck', 'bottom'] as const;
export type Band = (typeof BANDS)[number];

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export interface Place {
  readonly x: number;
  readonly y: number;
  readonly box: Box;
}

/**
 * A place for words on a card where no line crosses them and no others stand, in the first band that has one: the
 * highest, or the nearest to an end and to the finished line where that end of the card is given.
 */
export function placeOn(
  card: CardOnBench,
  lot: Lot,
  bands: readonly Band[],
  taken: readonly Box[],
  end?: number,
): Place | undefined {
  const [from, to] = besideEnd(card, end);
  const [wide, tall] = [lot.width / 2, lot.height / 2];
  const [half, up] = [wide + CLEAR, tall + CLEAR];
  for (const band of bands) {
    let best: Place | undefined;
    let least = Infinity;
    for (let x = from + half; x <= to - half; x += STEP) {
      const [low, high] = bandOver(card, band, x - half, x + half);
      const away = Math.abs(x - (end === undefined ? (from + to) / 2 : card.stations[end]!));
      for (let y = high - up; y >= low + up; y -= STEP) {
        const box = { left: x - wide, right: x + wide, low: y - tall, high: y + tall };
        if (taken.some((other) => meet(box, other))) continue;
        const cost = end === undefined ? away / 10 - y : away + (band === 'deck' ? -y : y) / 10;
        if (cost < least) [least, best] = [cost, { x, y, box }];
      }
    }
    if (best) return best;
  }
  return undefined;
}

/** Where words may stand along a card; those of one of two ends in its own half. */
function besideEnd(card: CardOnBench, end: number | undefined): [from: number, to: number] {
  const [from, to] = between(card);
  if (end === undefined || !card.isWhole) return [from, to];
  const middle = (from + to) / 2;
  return card.stations[end]! < middle ? [from, middle] : [middle, to];
}

/** Where long lines run beside words: from the end, or between both. */
function between({ left, right, corners, stations, inward, isWhole }: CardOnBench): [from: number, to: number] {
  const ends = corners.map(({ upper, lower }, i) => [upper[0], lower[0], stations[i]!]);
  if (isWhole) {
    const [a, b] = ends as [number[], number[]];
    return inward > 0 ? [Math.max(...a), Math.min(...b)] : [Math.max(...b), Math.min(...a)];
  }
  return inward > 0 ? [Math.max(...ends[0]!), right] : [left, Math.min(...ends[0]!)];
}

/** What is clear of lines over a whole stretch. */
function bandOver(card: CardOnBench, band: Band, from: number, to: number): [low: number, high: number] {
  const [under, over] =
    band === 'deck'
      ? [card.upper, card.deck]
      : band === 'inside'
        ? [card.lower, card.upper]
        : [card.bottom, card.lower];
  let [low, high] = [-Infinity, Infinity];
  for (let x = from; ; x = Math.min(to, x + LOOK)) {
    low = Math.max(low, heightAt(under, x));
    high = Math.min(high, heightAt(over, x));
    if (x >= to) return [low, high];
  }
}

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right + APART && b.left < a.right + APART && a.low < b.high + APART && b.low < a.high + APART;
