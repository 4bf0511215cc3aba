import type { Chamber } from '../chamber/chamber.js';
import type { Bench } from './bench.js';
import type { Shape } from './drawing.js';
import { spanAt } from './finished.js';
import { heightFitting } from './lettering.js';
import { blockArrow, contour, text } from './primitives.js';
import { WORDS } from './words.js';

/** Letters are read from a metre away: no larger than this they are large enough, mm. */
const LARGEST = 14;
/** Kept free between a chamber's line and what is written in it, mm. */
const MARGIN = 3;
/** Arrows: length, width at the head, mm; a chamber shorter than this has none. */
const ARROW = { length: 24, width: 9, chamber: 110, gap: 4 } as const;

/**
 * A chamber as it is marked on its face: the line to rout to, its number and depth, arrows to nose and deck, all inside the line.
 *
 * @param depth how deep it is, in words
 * @param others numbers that the same place has on the mirrored face
 */
export function chamberMark(chamber: Chamber, bench: Bench, depth: string, others: readonly string[] = []): Shape[] {
  const shapes: Shape[] = [contour('chamber', bench.contour(chamber.contour))];
  const s = chamber.contour.map((v) => v.x);
  const [from, to] = [Math.min(...s) + MARGIN, Math.max(...s) - MARGIN];
  const inset = to - from >= ARROW.chamber ? ARROW.length + 2 * ARROW.gap : 0;
  const room = roomIn(chamber, from + inset, to - inset);
  if (!room) return shapes;
  const tall = room.high - room.low;
  const width = room.to - room.from;
  const [x, y] = bench.point((from + to) / 2, (room.low + room.high) / 2);

  const numbers = [chamber.id, ...others];
  const lines = tall >= 20 ? [...numbers, depth] : [[...numbers, depth].join('  ')];
  // Capitals and the spaces between lines share the height, the numbers having twice the part of the depth.
  const share = tall / (lines.length === 1 ? 1.4 : 1.4 * (2 * numbers.length + 1));
  const sizes = lines.map((line, i) => {
    const part = lines.length > 1 && i < numbers.length ? 2 : 1;
    return heightFitting(line, { width, height: part * share }, part === 2 ? LARGEST : LARGEST / 2) ?? 1.8;
  });
  const spaces = sizes.slice(1).map((size, i) => 0.5 * Math.max(size, sizes[i]!));
  let top = y + (sum(sizes) + sum(spaces)) / 2;
  lines.forEach((line, i) => {
    shapes.push(text(line, [x, top - sizes[i]! / 2], sizes[i]!));
    top -= sizes[i]! + (spaces[i] ?? 0);
  });
  if (inset > 0) shapes.push(...noseArrow(chamber, bench, from), ...deckArrow(chamber, bench, to));
  return shapes;
}

/** At the nose end of the chamber: the arrow to the nose, its word inside. */
function noseArrow(chamber: Chamber, bench: Bench, end: number): Shape[] {
  const { length, width, gap } = ARROW;
  const room = roomIn(chamber, end + gap, end + gap + length);
  if (!room || room.high - room.low < width) return [];
  const toNose = bench.noseAt === 'left' ? -1 : 1;
  const [x, y] = bench.point(room.from, (room.low + room.high) / 2);
  return [blockArrow([x, y], [toNose, 0], length, width), text(WORDS.nose, [x - toNose * (length * 0.58), y], 2.5)];
}

/** At its tail end: the arrow to the deck, its word inside or, where it is short, beside. */
function deckArrow(chamber: Chamber, bench: Bench, end: number): Shape[] {
  const { length, width, gap } = ARROW;
  const room = roomIn(chamber, end - gap - width, end - gap);
  if (!room || room.high - room.low < width) return [];
  const toNose = bench.noseAt === 'left' ? -1 : 1;
  const tall = Math.min(length, room.high - room.low);
  const [x, y] = bench.point((room.from + room.to) / 2, (room.low + room.high) / 2);
  const inside = tall >= 18;
  const words = inside
    ? text(WORDS.deck, [x, y - tall * 0.1], 2.5, 'centre', { angleInDegrees: 90 })
    : text(WORDS.deck, [x + toNose * (width / 2 + 1), y], 2.5, toNose < 0 ? 'right' : 'left');
  return [blockArrow([x, y + tall / 2], [0, 1], tall, width), words];
}

interface Room {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
}

/** The upright rectangle over a stretch of the chamber that is free for writing, face frame; undefined where there is none. */
function roomIn({ profile }: Chamber, from: number, to: number): Room | undefined {
  let low = -Infinity;
  let high = Infinity;
  for (let i = 0; i <= SAMPLES; i++) {
    const span = spanAt(profile, from + ((to - from) * i) / SAMPLES);
    if (!span) return undefined;
    low = Math.max(low, span[0] + MARGIN);
    high = Math.min(high, span[1] - MARGIN);
  }
  return high > low && to > from ? { from, to, low, high } : undefined;
}

/** Places along a stretch at which its height is taken: edges are nearly straight over a chamber. */
const SAMPLES = 8;

function sum(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0);
}
