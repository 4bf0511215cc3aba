import type { Point } from '../../contour/point.js';
import { spanAt } from '../../contour/span.js';
import type { Chamber } from '../../chamber/chamber.js';
import type { FaceOnBench } from './faceOnBench.js';
import type { Caption, Shape } from '../drawing.js';
import { type FaceLine } from '../../view/faceLine.js';
import { widthOf, wrapped } from '../lettering.js';
import { blockArrow, circle, line, text } from '../primitives.js';
import { WORDS } from '../../words/say.js';

/**
 * Heights of a chamber's number with that of its depth, the best first: never under 5 mm, so that both are read from a
 * metre away.
 */
const SIZES = [
  [14, 7],
  [10, 7],
  [10, 5],
  [7, 5],
  [5, 5],
] as const;
/** Kept free between a chamber's line and what is written in it, mm. */
const MARGIN = 2.5;
/** Steps in which words are moved along a chamber, mm. */
const STEP = 14;
/** A chamber whose middle line rises by no more than this a millimetre is written in level, else along it. */
const LEVEL = 0.04;
/** The space between lines, as a share of the taller of both. */
const SPACE = 0.5;
/** On a leader outside: how far beyond the finished line, in steps, mm. */
const OUTSIDE = [6, 14, 22, 30] as const;

/**
 * A chamber's number and depth: inside its line wherever no seam and nothing else crosses them, else beyond the
 * finished line on a leader.
 *
 * @param depth how deep it is, in words
 * @param others numbers that the same place has on the mirrored face
 */
export function chamberCaption(
  chamber: Chamber,
  bench: FaceOnBench,
  finished: FaceLine,
  depth: string,
  others: readonly string[] = [],
): Caption {
  const numbers = [chamber.id, ...others];
  const layouts: readonly (readonly string[])[] = [
    [...numbers, depth],
    [numbers.join('  '), depth],
    [...numbers, ...wrapped(depth, 0.6 * widthOf(depth, 1), 1)],
    [[...numbers, depth].join('  ')],
  ];
  const inside = SIZES.flatMap(([large, small]) =>
    layouts.flatMap((lines) => {
      const heights = lines.map((words) => (words.startsWith(chamber.id) || others.includes(words) ? large : small));
      return placesIn(chamber, bench, lines, heights);
    }),
  );
  return { places: [...inside, ...onLeaders(chamber, bench, finished, layouts)] };
}

/** The arrows to nose and deck with their words, where a chamber has room for them beside its number. */
export function arrowCaptions(chamber: Chamber, bench: FaceOnBench): Caption[] {
  const toNose = bench.noseAt === 'left' ? -1 : 1;
  const [from, to] = stretch(chamber);
  const places = (draw: (x: number, y: number) => Shape[], width: number, tall: number, order: 1 | -1) => {
    const found: Shape[][] = [];
    for (let s = from + width / 2; s <= to - width / 2; s += STEP) {
      const middle = middleAt(chamber, s);
      if (middle !== undefined && holds(chamber, s, middle, width, tall, 0))
        found.push(draw(...bench.point(s, middle)));
    }
    return order === 1 ? found : found.reverse();
  };
  const words = 5;
  const noseWidth = ARROW + 2 + widthOf(WORDS.nose, words);
  const nose = (x: number, y: number): Shape[] => [
    blockArrow([x + (toNose * noseWidth) / 2, y], [toNose, 0], ARROW, 7),
    text(WORDS.nose, [x + toNose * (noseWidth / 2 - ARROW - 2), y], words, toNose < 0 ? 'left' : 'right'),
  ];
  const deckWidth = 9 + widthOf(WORDS.deck, words);
  const deck = (x: number, y: number): Shape[] => [
    blockArrow([x - deckWidth / 2 + 3.5, y + ARROW / 2], [0, 1], ARROW, 7),
    text(WORDS.deck, [x - deckWidth / 2 + 9, y], words, 'left'),
  ];
  return [
    { places: places(nose, noseWidth + 4, 8, 1), optional: true },
    { places: places(deck, deckWidth + 4, ARROW + 1, -1), optional: true },
  ];
}

/** Length of an arrow, mm. */
const ARROW = 13;

/** All places along a chamber that hold some lines of words, from its middle outward. */
function placesIn(
  chamber: Chamber,
  bench: FaceOnBench,
  lines: readonly string[],
  heights: readonly number[],
): Shape[][] {
  const width = Math.max(...lines.map((words, i) => widthOf(words, heights[i]!)));
  const tall = tallOf(heights);
  const [from, to] = stretch(chamber);
  const middle = (from + to) / 2;
  const places: Shape[][] = [];
  for (let off = 0; off <= (to - from - width) / 2; off += STEP) {
    for (const s of off === 0 ? [middle] : [middle - off, middle + off]) {
      const z = middleAt(chamber, s);
      const rise = riseAt(chamber, s, width);
      if (z === undefined || !holds(chamber, s, z, width, tall, rise)) continue;
      const onBench = bench.noseAt === 'left' ? rise : -rise;
      places.push(block(lines, heights, bench.point(s, z), Math.atan(onBench)));
    }
  }
  return places;
}

/** Places beyond the finished line, over the deck and under the bottom, with a line to a spot in the chamber. */
function onLeaders(
  chamber: Chamber,
  bench: FaceOnBench,
  { heightsAt }: FaceLine,
  layouts: readonly (readonly string[])[],
): Shape[][] {
  const [from, to] = stretch(chamber);
  const middle = (from + to) / 2;
  const z = middleAt(chamber, middle) ?? 0;
  return [layouts.at(-1)!, layouts[1]!].flatMap((lines) => {
    const heights = lines.map(() => 5);
    const [width, tall] = [Math.max(...lines.map((words) => widthOf(words, 5))), tallOf(heights)];
    return OUTSIDE.flatMap((out) =>
      [0, 1, -1, 2, -2].flatMap((step) =>
        [-1, 1].flatMap((side): Shape[][] => {
          const s = middle + (step * (width + 10)) / 2;
          const edges = [-0.5, 0, 0.5].flatMap((share) => heightsAt(s + share * width) ?? []);
          if (edges.length === 0) return [];
          const edge =
            side < 0 ? Math.min(...edges.map(({ bottom }) => bottom)) : Math.max(...edges.map(({ deck }) => deck));
          const at = bench.point(s, edge + side * (out + tall / 2));
          const spot = bench.point(middle, z);
          const foot: Point = [at[0], at[1] - (side * (tall + 3)) / 2];
          return [[...block(lines, heights, at, 0), line('dimension', spot, foot), circle('dimension', ...spot, 1)]];
        }),
      ),
    );
  });
}

/** Lines of words one under the other around a middle, turned by an angle in radians. */
function block(lines: readonly string[], heights: readonly number[], [x, y]: Point, angle: number): Shape[] {
  let up = tallOf(heights) / 2;
  return lines.map((words, i) => {
    const height = heights[i]!;
    const out = up - height / 2;
    up -= height + (i + 1 < heights.length ? SPACE * Math.max(height, heights[i + 1]!) : 0);
    const at: Point = [x - out * Math.sin(angle), y + out * Math.cos(angle)];
    const turn = angle === 0 ? {} : { angleInDegrees: (angle * 180) / Math.PI };
    return text(words, at, height, 'centre', turn);
  });
}

function tallOf(heights: readonly number[]): number {
  return heights.reduce((sum, height, i) => sum + height + (i > 0 ? SPACE * Math.max(height, heights[i - 1]!) : 0), 0);
}

function stretch({ contour }: Chamber): readonly [from: number, to: number] {
  const s = contour.map(({ x }) => x);
  return [Math.min(...s) + MARGIN, Math.max(...s) - MARGIN];
}

function middleAt({ profile }: Chamber, s: number): number | undefined {
  const span = spanAt(profile, s);
  return span && (span[0] + span[1]) / 2;
}

/** How much the middle line rises a millimetre over a stretch; nothing where it is nearly level. */
function riseAt(chamber: Chamber, s: number, width: number): number {
  const [a, b] = [middleAt(chamber, s - width / 2), middleAt(chamber, s + width / 2)];
  const rise = a === undefined || b === undefined ? 0 : (b - a) / width;
  return Math.abs(rise) <= LEVEL ? 0 : rise;
}

/** Whether a box around a place, turned by a rise, lies within the chamber, its margin kept. */
function holds({ profile }: Chamber, s: number, z: number, width: number, tall: number, rise: number): boolean {
  const length = Math.hypot(1, rise);
  const [us, uz] = [1 / length, rise / length];
  for (const along of [-0.5, -0.25, 0, 0.25, 0.5]) {
    for (const up of [-0.5, 0.5]) {
      const at = s + along * width * us - up * tall * uz;
      const height = z + along * width * uz + up * tall * us;
      const span = spanAt(profile, at);
      if (!span || height < span[0] + MARGIN || height > span[1] - MARGIN) return false;
    }
  }
  return true;
}
