import type { Point } from '../../contour/point.js';
import { reversed } from '../../contour/reversed.js';
import type { Vertex } from '../../contour/vertex.js';
import { heightAt } from '../../chamber/edges.js';
import type { CornerCard } from './cornerCards.js';

/** A card as it lies on the bench, deck up: `x` right, `y` up, mm, every line left to right. */
export interface CardOnBench {
  readonly left: number;
  readonly right: number;
  readonly deck: readonly Point[];
  readonly bottom: readonly Point[];
  readonly rout: readonly Vertex[];
  readonly isWhole: boolean;
  readonly upper: readonly Point[];
  readonly lower: readonly Point[];
  /** The corners of each of its ends, and deck and bottom line where that end is written to be. */
  readonly corners: readonly {
    readonly upper: Point;
    readonly lower: Point;
    readonly deck: number;
    readonly bottom: number;
  }[];
  readonly stations: readonly number[];
  /** From its end into the chamber: right (1) or left (-1). */
  readonly inward: 1 | -1;
}

export function cardOnBench({ noseAt, ends, shown }: CornerCard): CardOnBench {
  const isLeft = noseAt === 'left';
  const x = (s: number) => (isLeft ? s : -s);
  const turned = (line: readonly Point[]): Point[] => {
    const seen = line.map(([s, z]): Point => [x(s), z]);
    return isLeft ? seen : seen.reverse();
  };
  return {
    left: Math.min(x(shown.from), x(shown.to)),
    right: Math.max(x(shown.from), x(shown.to)),
    deck: turned(shown.deck),
    bottom: turned(shown.bottom),
    rout: isLeft ? shown.rout : reversed(shown.rout.map((v) => ({ ...v, x: -v.x }))),
    isWhole: shown.isWhole,
    upper: turned(shown.upper),
    lower: turned(shown.lower),
    corners: ends.map((end, i) => {
      const at = end === 'nose' ? 0 : -1;
      const [[su, zu], [sl, zl]] = [shown.upper.at(at)!, shown.lower.at(at)!];
      const s = shown.stations[i]!;
      return {
        upper: [x(su), zu],
        lower: [x(sl), zl],
        deck: heightAt(shown.deck, s),
        bottom: heightAt(shown.bottom, s),
      };
    }),
    stations: shown.stations.map(x),
    inward: isLeft === (ends[0] === 'nose') ? 1 : -1,
  };
}
