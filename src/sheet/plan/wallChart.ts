import { PATCHES, type Patch } from '../../board/mesh.js';
import type { Chamber } from '../../chamber/chamber.js';
import { stretchOf } from '../../chamber/stretch.js';
import { bare } from '../../length/bare.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import { MM_PER_FOOT, MM_PER_INCH } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import type { Caption, Drawing, Part, Shape } from '../drawing.js';
import { widthOf } from '../lettering.js';
import { chambersOf, type MirroredRow } from '../mirror.js';
import { levelLines } from '../chart/levels.js';
import { line, polygon, text } from '../primitives.js';
import { say, WORDS } from '../../words/say.js';

/** The chart on its page: three fields, one above the other, mm. */
const WIDTH = 140;
const FIELD = 46;
const BETWEEN = 16;
const LETTERS = 2.5;
/** A field reaches from nothing to so many times what was asked, or over its thickest wall. */
const FIELD_TIMES = 2;
const OVER = 1.15;

/**
 * The walls of a row along the board: for deck, bottom and rail a field with each chamber's thinnest wall and what was
 * asked.
 */
export function wallChart(plan: Plan, { row, mirror }: MirroredRow): Drawing {
  const chambers = chambersOf(plan, row);
  const fields = PATCHES.map((patch, i) => field(patch, -i * (FIELD + BETWEEN), chambers, plan));
  const ids = [row.id, ...(mirror ? [mirror.id] : [])].join(WORDS.joinWith);
  return {
    id: `walls-${row.id}`,
    title: say(WORDS.wallChart.title, { row: ids }),
    isChart: true,
    notes: WORDS.wallChart.notes,
    shapes: fields.flatMap(({ shapes }) => shapes),
    captions: fields.flatMap(({ captions }) => captions),
  };
}

/** One field, its lower left corner at `x` = 0, `y` = `base`. */
function field(patch: Patch, base: number, chambers: readonly Chamber[], plan: Plan): Omit<Part, 'name'> {
  const { units } = plan.job;
  const asked = plan.asked[patch];
  const walls = chambers.map(({ wall }) => wall[patch]).filter(Number.isFinite);
  const most = Math.max(asked * FIELD_TIMES, ...walls.map((wall) => wall * OVER));
  const x = (s: number) => (s / plan.board.length) * WIDTH;
  const y = (wall: number) => base + (Math.max(wall, 0) / most) * FIELD;
  const levels = chambers.map((chamber) => {
    return { ...stretchOf(chamber.profile), value: chamber.wall[patch] };
  });
  const step = units === 'mm' ? 500 : MM_PER_FOOT;
  const along = Array.from({ length: Math.floor(plan.board.length / step) + 1 }, (_, i) => i * step);
  const up = stepsUpTo(most, units === 'mm' ? 5 : MM_PER_INCH / 4);
  const shapes: Shape[] = [
    polygon('dimension', [
      [0, base],
      [WIDTH, base],
      [WIDTH, base + FIELD],
      [0, base + FIELD],
    ]),
    ...along.flatMap((s): Shape[] => [
      line('dimension', [x(s), base], [x(s), base - 1.5]),
      text(printLength(s, units), [x(s), base - 4], 1.8),
    ]),
    ...up.flatMap((wall): Shape[] => [
      line('dimension', [0, y(wall)], [-1.5, y(wall)]),
      text(printLength(wall, units), [-2.5, y(wall)], 1.8, 'right'),
    ]),
    text(WORDS.patch[patch], [0, base + FIELD + 3.5], 3.5, 'left'),
    text(
      say(WORDS.wallChart.asked, { length: printAs('needed', asked, units) }),
      [WIDTH, base + FIELD + 3.5],
      LETTERS,
      'right',
    ),
    line('mark', [0, y(asked)], [WIDTH, y(asked)]),
    ...levelLines(levels, x, y).map((points) => line('outline', ...points)),
  ];
  const captions = levels.flatMap(({ from, to, value }, i) =>
    numbersAt(chambers[i]!, (x(from) + x(to)) / 2, y(value), value, plan, base),
  );
  return { shapes, captions };
}

/**
 * Over its line, or under it, a chamber's wall; at the foot of the field, or at its head, its place; upright where they
 * stand close.
 */
function numbersAt(
  { id, row }: Chamber,
  x: number,
  y: number,
  value: number,
  { job: { units } }: Plan,
  base: number,
): Caption[] {
  const off = 2.4;
  const upright = (words: string) => widthOf(words, LETTERS) / 2 + 1;
  const level = (words: string, at: number) => [text(words, [x, at], LETTERS)];
  const turned = (words: string, at: number) => [text(words, [x, at], LETTERS, 'centre', { angleInDegrees: 90 })];
  const place = id.slice(row.length + 1);
  const [foot, head] = [base, base + FIELD];
  const places: Caption = {
    places: [
      ...[1, 2.5, 4, 5.5].map((times) => level(place, foot + times * off)),
      ...[1, 2.5].map((times) => level(place, head - times * off)),
    ],
  };
  if (!Number.isFinite(value)) return [places];
  const wall = bare(printAs('there', value, units));
  const ups = [1, 2, 3, 4];
  return [
    places,
    {
      places: [
        ...ups.flatMap((times) => [level(wall, y + times * off), level(wall, y - times * off)]),
        ...ups.flatMap((times) => [
          turned(wall, y + upright(wall) + (times - 1) * off),
          turned(wall, y - upright(wall) - (times - 1) * off),
        ]),
      ],
    },
  ];
}

/** Round steps from 0 up, no more than eight. */
function stepsUpTo(most: number, unit: number): number[] {
  let step = unit;
  while (most / step > 8) step *= 2;
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
}
