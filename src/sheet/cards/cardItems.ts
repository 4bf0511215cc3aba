import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import { widthOf, wrapped } from '../lettering.js';
import { say, WORDS } from '../../words/say.js';
import type { CornerCard, End, Served } from './cornerCards.js';
import { arrowLot, linesLot, type Lot } from './lot.js';
import { BANDS, type Band } from './roomOnCard.js';

/** Words of a card in several shapes, the best first, and where they may stand. */
export interface Item {
  readonly lots: readonly Lot[];
  readonly bands: readonly Band[];
  /** Said beside an end of the card: which of its ends, and what it says where it cannot stand there. */
  readonly beside?: { readonly end: number; readonly away: readonly Lot[] };
}

/** Heights of letters, mm: of a chamber's number, of words, and of what is said beside an end. */
export type Letters = readonly [number: number, words: number, beside: number];

/**
 * All that is said on a card, the most important first: how far the corners of its ends are under the deck and over the
 * bottom, the number of each end it serves with where that end is, nose and deck.
 */
export function cardItems(card: CornerCard, units: Units, [large, small, beside]: Letters): Item[] {
  const { ends, shown, noseAt } = card;
  const { columns } = WORDS.marking;
  const titles: Record<End, readonly [deck: string, bottom: string]> = {
    nose: [columns.underDeckFrom, columns.overBottomFrom],
    tail: [columns.underDeckTo, columns.overBottomTo],
  };
  const heights = shown.heights.flatMap(({ underDeck, overBottom }, end) =>
    (['deck', 'bottom'] as const).map((band, i): Item => {
      const height = printAs('skin', i === 0 ? underDeck : overBottom, units);
      const away = inLines(`${titles[ends[end]!][i]!} ${height}`, small);
      return { lots: [linesLot([[height, beside]])], bands: [band], beside: { end, away } };
    }),
  );
  const others = [
    ...card.serves.map((served) => numberOf(served, large, small)),
    ...endsOf(card, units).map((words) => inLines(words, small)),
    [arrowLot(WORDS.nose, noseAt === 'left' ? [-1, 0] : [1, 0], small)],
    // All words stand upright: where there is no room for its word, the arrow says enough.
    [arrowLot(WORDS.deck, [0, 1], small), arrowLot('', [0, 1], small)],
  ];
  return [...heights, ...others.map((lots) => ({ lots, bands: BANDS }))];
}

function numberOf({ chamber, face, turnedOver }: Served, large: number, small: number): Lot[] {
  const more = [...(face ? [say(WORDS.cards.onFace, { face })] : []), ...(turnedOver ? [WORDS.cards.turnOver] : [])];
  const parted = [[chamber, large] as const, ...more.map((words) => [words, small] as const)];
  const whole = [[[chamber, ...more].join(' '), large]] as const;
  return [linesLot(parted), linesLot(whole, true), linesLot(parted, true)];
}

/** Where the ends are: once where all that the card serves are in the same place, else each by its number. */
function endsOf({ serves, ends }: CornerCard, units: Units): string[] {
  const said = ({ stations }: Served) =>
    ends.map((end, i) => say(WORDS.cards.end[end], { at: printLength(stations[i]!, units) }));
  const first = said(serves[0]!);
  if (serves.every((served) => said(served).join() === first.join())) return first;
  return serves.flatMap((served) => said(served).map((end) => say(WORDS.cards.endOf, { number: served.chamber, end })));
}

/** A sentence in one line, in two, in three; level, then upright. */
function inLines(words: string, height: number): Lot[] {
  const width = widthOf(words, height);
  const ways = [1, 0.6, 0.45].map((share) =>
    wrapped(words, share * width, height).map((each) => [each, height] as const),
  );
  return [...ways.map((lines) => linesLot(lines)), ...ways.map((lines) => linesLot(lines, true))];
}
