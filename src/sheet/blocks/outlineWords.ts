import type { Point } from '../../contour/point.js';
import { spanAt } from '../../contour/span.js';
import { turned } from '../../contour/turned.js';
import type { Vertex } from '../../contour/vertex.js';
import type { Caption, Shape } from '../drawing.js';
import { widthOf } from '../lettering.js';
import { blockArrow, circle, line, text } from '../primitives.js';
import { WORDS } from '../../words/say.js';

/** Kept free between an outline and its words, mm. */
const MARGIN = 3;
/**
 * Heights of the numbers, the largest that fits first; nothing that is read at the bench is lower than the last, mm
 * (ISO 3098-1:2015 series).
 */
const NUMBERS = [14, 10, 7, 5] as const;
const LETTERS = 5;
/** Between words on one line; more than one space would be one again in SVG. */
const BETWEEN = ' · ';
/** From a line to the next, as a share of its height. */
const PITCH = 1.5;
/** Arrows beside the words for nose and deck, mm. */
const ARROW = { length: 8, width: 5, gap: 2 } as const;
/** Words outside an outline stand this far under it, mm. */
const BELOW = 6;

/** What is written on an outline. */
export interface OutlineWords {
  /** Each block it serves, the first as it lies here. */
  readonly numbers: readonly string[];
  readonly thick: string;
  readonly noseAt: 'left' | 'right';
  /** What is planed off once the block is in its chamber, where something is. */
  readonly proud?: string;
}

/** A line of words: its height, and an arrow at its left and at its right end, where there is one. */
interface Line {
  readonly words: string;
  readonly height: number;
  readonly arrows?: readonly [left: Point, right: Point];
}

/**
 * Numbers, thickness, nose and deck of an outline: turned with it and wholly inside where there is room, from its
 * middle outward, the largest letters first; what does not fit, in whole lines, stands under it on a leader (ISO 128-2:
 * a leader that ends within an outline ends in a dot).
 */
export function outlineWords(contour: readonly Vertex[], words: OutlineWords): Caption {
  const points = contour.map(({ x, y }): Point => [x, y]);
  const inside = NUMBERS.flatMap((height) =>
    arrangements(words, height).flatMap((lines) =>
      roomsFor(lines, points).map(({ at, angle }) => stack(lines, at, angle)),
    ),
  );
  // The number by itself, and all else under it; at the last all of it under it.
  const length = Math.max(...points.map(([x]) => x)) - Math.min(...points.map(([x]) => x));
  const ways = arrangements(words, LETTERS);
  const all = ways.find((lines) => Math.max(...lines.map(wide)) <= length) ?? ways.at(-1)!;
  const beside = all
    .map((_, i) => all.length - 1 - i)
    .filter((count) => count > 0)
    .flatMap((count) => {
      const under = onLeaders(all.slice(count), points);
      return roomsFor(all.slice(0, count), points).flatMap(({ at, angle }) =>
        under.map((shapes) => [...stack(all.slice(0, count), at, angle), ...shapes]),
      );
    });
  // An outline may take several pages, and its words one: fewer on a line, wherever along it.
  const narrow = ways.toReversed().flatMap((lines) => onLeaders(lines, points));
  return { places: [...inside, ...beside, ...onLeaders(all, points), ...narrow] };
}

/** From all numbers in one line to each in its own, the thickness between nose and deck or by itself. */
function arrangements({ numbers, thick, noseAt, proud }: OutlineWords, height: number): Line[][] {
  const isLeft = noseAt === 'left';
  const ends = (between: string): Line => ({
    words: (isLeft ? [WORDS.nose, between, WORDS.deck] : [WORDS.deck, between, WORDS.nose])
      .filter(Boolean)
      .join(BETWEEN),
    height: LETTERS,
    arrows: isLeft ? [TO_LEFT, UP] : [UP, TO_RIGHT],
  });
  const lineCounts = [...new Set(numbers.map((_, i) => Math.ceil(numbers.length / (i + 1))))].reverse();
  return lineCounts.flatMap((count): Line[][] => {
    const each = inLines(numbers, count).map((some): Line => ({ words: some.join(BETWEEN), height }));
    const small = (words: string): Line => ({ words, height: LETTERS });
    const last = proud === undefined ? [[]] : [[small(proud)], proud.split(': ').map(small)];
    return last.flatMap((more) => [
      [...each, ends(thick), ...more],
      ...(thick === '' ? [] : [[...each, small(thick), ends(''), ...more]]),
    ]);
  });
}

function inLines(numbers: readonly string[], count: number): string[][] {
  const many = Math.ceil(numbers.length / count);
  return Array.from({ length: Math.ceil(numbers.length / many) }, (_, i) => numbers.slice(i * many, (i + 1) * many));
}

const TO_LEFT: Point = [-1, 0];
const TO_RIGHT: Point = [1, 0];
const UP: Point = [0, 1];

const wide = ({ words, height, arrows }: Line): number =>
  widthOf(words, height) + (arrows ? 2 * (ARROW.length + ARROW.gap) : 0);

const tall = (lines: readonly Line[]): number =>
  lines.reduce((sum, { height }, i) => sum + height * (i === lines.length - 1 ? 1 : PITCH), 0);

/** What rises by no more than this is written on level, radians. */
const LEVEL = 0.02;
/**
 * Places along an outline that are tried, from its middle outward, and places along the words at which its height is
 * taken.
 */
const TRIED = 12;
const SAMPLES = 8;

/**
 * The middles of the places inside an outline where lines fit, level where they can be, then along the outline's middle
 * line.
 */
function roomsFor(lines: readonly Line[], points: readonly Point[]): { readonly at: Point; readonly angle: number }[] {
  const [width, height] = [Math.max(...lines.map(wide)) + 2 * MARGIN, tall(lines) + 2 * MARGIN];
  const slope = slopeOf(points);
  return (Math.abs(slope) < LEVEL ? [0] : [0, slope]).flatMap((angle) => {
    const level = points.map((point) => turned(point, -angle));
    const xs = level.map(([x]) => x);
    const [from, to] = [Math.min(...xs) + width / 2, Math.max(...xs) - width / 2];
    if (from > to) return [];
    return outward(from, to).flatMap((middle) => {
      const [low, high] = bandOver(level, middle - width / 2, middle + width / 2);
      return high - low >= height ? [{ at: turned([middle, (low + high) / 2], angle), angle }] : [];
    });
  });
}

/** Places from the middle of a stretch to its ends. */
function outward(from: number, to: number): number[] {
  return Array.from({ length: TRIED + 1 }, (_, i) => {
    const off = (i % 2 === 0 ? i : -i - 1) / 2 / TRIED;
    return (from + to) / 2 + off * (to - from);
  }).filter((place) => place >= from && place <= to);
}

/** What is inside an outline over a whole stretch of it. */
function bandOver(points: readonly Point[], from: number, to: number): readonly [low: number, high: number] {
  let [low, high] = [-Infinity, Infinity];
  for (let i = 0; i <= SAMPLES; i++) {
    const span = spanAt(points, from + ((to - from) * i) / SAMPLES);
    if (!span) return [0, -1];
    low = Math.max(low, span[0]);
    high = Math.min(high, span[1]);
  }
  return [low, high];
}

/** Of the line through the middles of an outline's ends, radians. */
function slopeOf(points: readonly Point[]): number {
  const xs = points.map(([x]) => x);
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const inset = (to - from) / 10;
  const middle = (x: number): number => {
    const [low, high] = spanAt(points, x)!;
    return (low + high) / 2;
  };
  return Math.atan2(middle(to - inset) - middle(from + inset), to - from - 2 * inset);
}

/** Lines one under the other about their middle. */
function stack(lines: readonly Line[], at: Point, angle: number): Shape[] {
  let top = tall(lines) / 2;
  const place = (x: number, y: number): Point => {
    const [dx, dy] = turned([x, y], angle);
    return [at[0] + dx, at[1] + dy];
  };
  const more = angle === 0 ? {} : { angleInDegrees: (angle * 180) / Math.PI };
  return lines.flatMap((each): Shape[] => {
    const y = top - each.height / 2;
    top -= each.height * PITCH;
    const half = widthOf(each.words, each.height) / 2 + ARROW.gap;
    const arrows = (each.arrows ?? []).map((toward, i): Shape => {
      const side = i === 0 ? -1 : 1;
      const middle = side * (half + ARROW.length / 2);
      const length = toward[0] === 0 ? each.height + 2 : ARROW.length;
      const tip = place(middle + (toward[0] * length) / 2, y + (toward[1] * length) / 2);
      return blockArrow(tip, turned(toward, angle), length, ARROW.width);
    });
    return [text(each.words, place(0, y), each.height, 'centre', more), ...arrows];
  });
}

/**
 * Lines under an outline, with a leader from them to a dot inside it: under its middle, its left end, its right end,
 * and anywhere between.
 */
function onLeaders(lines: readonly Line[], points: readonly Point[]): Shape[][] {
  const xs = points.map(([x]) => x);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const low = Math.min(...points.map(([, y]) => y));
  const width = Math.max(...lines.map(wide));
  const inset = Math.min(12, (right - left) / 4);
  const between = outward(left + width / 2, right - width / 2).map((middle) => [
    middle,
    Math.min(right - inset, Math.max(left + inset, middle)),
  ]);
  return [
    [Math.max(left + width / 2, (left + right) / 2), left + inset],
    [left + width / 2, left + inset],
    [right - width / 2, right - inset],
    ...between,
  ].map(([middle, foot]) => {
    const [bottom, top] = spanAt(points, foot!)!;
    const inside: Point = [foot!, bottom + Math.min(4, (top - bottom) / 3)];
    return [
      ...stack(lines, [middle!, low - BELOW - tall(lines) / 2], 0),
      line('dimension', [foot!, low - BELOW + 1], inside),
      circle('dimension', ...inside, 0.7),
    ];
  });
}
