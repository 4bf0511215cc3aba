import { once } from '../../kept/once.js';
import type { Vertex } from '../../contour/vertex.js';
import type { Plan } from '../../plan.js';
import type { Drawing, Part } from '../drawing.js';
import { layInRows } from '../layInRows.js';
import { legendOf } from '../legendOf.js';
import { contour, line } from '../primitives.js';
import { say, WORDS } from '../../words/say.js';
import { TAB_STEP } from './cardTab.js';
import { cardWords } from './cardWords.js';
import { cornerCards, type CornerCard } from './cornerCards.js';
import { cardOnBench, type CardOnBench } from './cardOnBench.js';

/**
 * The corner cards of a plan at full size, a drawing for each row whose face they are drawn from: each different end of
 * a chamber once, seen by the one who marks the face, deck up, between the finished deck and bottom line, along which
 * it is cut out.
 */
export const cardSheets = once((plan: Plan): readonly Drawing[] => {
  const cards = cornerCards(plan);
  return [...new Set(cards.map(({ row }) => row))].map((row): Drawing => {
    const apart = layInRows(cards.filter((card) => card.row === row).map((card) => partOf(card, plan)));
    return {
      id: `cards-${row}`,
      title: say(WORDS.cards.title, { row }),
      notes: [WORDS.cards.notes],
      legend: legendOf('card'),
      shapes: apart.flatMap(({ shapes }) => shapes),
      captions: [],
      apart,
      isNotCut: true,
    };
  });
});

function partOf(card: CornerCard, plan: Plan): Part {
  const lines = cardOnBench(card);
  const { words, tab } = cardWords(card, lines, plan.job.units);
  return {
    name: card.serves.map(({ chamber }) => chamber).join(WORDS.joinWith),
    shapes: [...sides(lines, tab), ...marked(lines), ...words],
    captions: [],
  };
}

/** What the card is cut out along, and the line to rout on it. */
function sides({ left, right, deck, bottom, inward, rout, isWhole }: CardOnBench, tab: number) {
  const ends = [left, right].map((x, i) => {
    const [high, low] = [deck.at(-i)![1], bottom.at(-i)![1]];
    const isInner = inward === (i === 0 ? -1 : 1);
    if (tab === 0 || !isInner) return line('edge', [x, low], [x, high]);
    // The tab is no part of the face: it is a little lower than the card, so that nobody lays it to an edge.
    const out = x + inward * tab;
    return line(
      'edge',
      [x, low],
      [x, low + TAB_STEP],
      [out, low + TAB_STEP],
      [out, high - TAB_STEP],
      [x, high - TAB_STEP],
      [x, high],
    );
  });
  const opened = { kind: 'path', layer: 'chamber', closed: false, vertices: rout } as const;
  return [line('edge', ...deck), line('edge', ...bottom), ...ends, isWhole ? contour('chamber', rout) : opened];
}

/** Where each end is, and its corners as they are before easing. */
function marked({ corners, stations, rout }: CardOnBench) {
  return corners.flatMap(({ upper, lower, deck, bottom }, i) => {
    const x = stations[i]!;
    return [
      line('mark', [x, deck], [x, upper[1]]),
      line('mark', [x, bottom], [x, lower[1]]),
      ...[upper, lower].map((corner) => {
        const [a, b] = tangents(rout, corner);
        return line('dimension', [a.x, a.y], corner, [b.x, b.y]);
      }),
    ];
  });
}

/** Where the arc nearest to a corner begins and ends. */
function tangents(rout: readonly Vertex[], [x, y]: readonly [number, number]): readonly [Vertex, Vertex] {
  const arcs = rout.flatMap((v, i) => (v.bulge ? [[v, rout[(i + 1) % rout.length]!] as const] : []));
  const far = ([a, b]: readonly [Vertex, Vertex]) => Math.hypot((a.x + b.x) / 2 - x, (a.y + b.y) / 2 - y);
  return arcs.reduce((best, arc) => (far(arc) < far(best) ? arc : best));
}
