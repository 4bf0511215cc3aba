import words from '../../../templates/stock.json' with { type: 'json' };
import type { Stretch } from '../../chamber/stretch.js';
import { betweenAlong } from '../../contour/betweenAlong.js';
import { isolines } from '../../contour/isolines.js';
import type { Point } from '../../contour/point.js';
import { bare } from '../../length/bare.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import { printThin } from '../../length/thin.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import { planedOff } from '../../stock/passes.js';
import type { ShortPlace } from '../../stock/short.js';
import type { InBlank } from '../../stock/inBlank.js';
import { stripMaps, type StripMap } from '../../stock/stripMap.js';
import { outlineInPlan, sideOf } from '../../view/outlineInPlan.js';
import { stripsInPlan } from '../../view/stripsInPlan.js';
import { say, WORDS } from '../../words/say.js';
import type { Caption, Drawing, Shape } from '../drawing.js';
import { widthOf } from '../lettering.js';
import { circle, line, text } from '../primitives.js';
import { sayShort, shortRadius } from './shortPlaces.js';

const { sheet } = words;
/** What a part of the blank is drawn at (ISO 5455), and how much of it a page takes along, mm of paper. */
const SCALE = 10;
const PAGE = 190;
const LETTERS = 3.5 * SCALE;
const SMALL = 2.5 * SCALE;
/** Between lines, mm or sixteenths of an inch: the first of these that needs no more lines. */
const STEPS = [1, 2, 4, 8, 16];
const MOST_LINES = 14;
/** Kept of the blank beyond the board's ends, mm. */
const ENDS = 200;

type Side = StripMap['side'];

/**
 * The glued blank from above, in parts, with lines along which the same comes off the deck; and the same from below
 * for the bottom. Nose on the left, places where it is short circled.
 */
export function blankMaps(plan: Plan, blank: InBlank): Drawing[] {
  const maps = stripMaps(plan.board, blank);
  const { length } = plan.board;
  const count = Math.ceil((length + ENDS) / (PAGE * SCALE));
  const stretches = Array.from({ length: count }, (_, i): Stretch => ({
    from: i === 0 ? -ENDS : (i * length) / count,
    to: i + 1 === count ? length + ENDS : ((i + 1) * length) / count,
  }));
  return (['deck', 'bottom'] as const).flatMap((side) => {
    const contours = contoursOf(
      maps.filter((map) => map.side === side),
      plan.job.units,
    );
    return stretches.map((stretch, i) => part(plan, blank, side, contours, stretch, i + 1, count));
  });
}

interface Contour {
  readonly level: number;
  readonly points: readonly Point[];
}

function contoursOf(maps: readonly StripMap[], units: Units): Contour[] {
  let [low, high] = [Infinity, -Infinity];
  for (const { value } of maps) {
    for (const each of value) {
      if (each < low) low = each;
      if (each > high) high = each;
    }
  }
  const steps = STEPS.map((times) => times * (units === 'mm' ? 1 : MM_PER_INCH / 16));
  const step = steps.find((each) => high - low <= each * MOST_LINES) ?? steps.at(-1)!;
  const first = Math.ceil(low / step);
  const levels = low < high ? Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) => first + i) : [];
  return levels
    .map((times) => times * step)
    .flatMap((level) => maps.flatMap((map) => isolines(map, level).map((points) => ({ level, points }))));
}

function part(
  plan: Plan,
  blank: InBlank,
  side: Side,
  contours: readonly Contour[],
  stretch: Stretch,
  number: number,
  parts: number,
): Drawing {
  const { job, board } = plan;
  // Seen from below with the nose on the left, the right side lies below.
  const up = side === 'deck' ? 1 : -1;
  const hands = blank.isAlike ? [1, -1] : [1];
  const on = (points: readonly Point[], hand = 1) =>
    betweenAlong(
      points.map(([x, y]): Point => [x, up * hand * y]),
      stretch.from,
      stretch.to,
    );
  const outline = outlineInPlan(board, { from: 0, to: board.length });
  const drawn = contours.flatMap((contour) =>
    hands.flatMap((hand) => on(contour.points, hand).map((points) => ({ ...contour, points, hand }))),
  );
  const short = blank.short.map((place, i) => ({ place, number: i + 1 })).filter(({ place }) => showsOn(place, side));
  const here = short.filter(({ place: { at } }) => at[0] >= stretch.from && at[0] < stretch.to);
  const strips = stripsInPlan(blank);
  const half = Math.max(...strips.flat().map(([, y]) => Math.abs(y))) + LETTERS;
  const middle = (Math.max(stretch.from, 0) + Math.min(stretch.to, board.length)) / 2;
  const { notes } = sheet.map;
  const { allowance } = job.stock!;
  const highest = Math.max(0, ...drawn.map(({ level }) => level));
  const off = planedOff(highest, allowance, job.units);
  return {
    id: `${side}-off-${number}`,
    title: say(sheet.map.title, { side: sheet[side], part: number, parts }),
    notes: [
      [
        notes[side],
        say(notes.figures, { units: WORDS.units[job.units], allowance: printAs('stays', allowance, job.units) }),
        ...(off > 0
          ? [say(notes.example, { line: bare(printLength(highest, job.units)), off: printThin(off, job.units) })]
          : []),
        ...(here.length > 0 ? [notes.rings] : []),
      ].join(' '),
      ...here.map(({ place, number: of }) => sayShort(place, of, blank.isAlike, job.units)),
    ],
    shapes: [
      ...strips.flatMap((points) => on([...points, points[0]!]).map((each) => line('outline', ...each))),
      ...(['right', 'left'] as const).flatMap((each) =>
        on(sideOf(outline, each)).map((points) => line('edge', ...points)),
      ),
      ...drawn.map(({ points }) => line('dimension', ...points)),
      ...here.flatMap(({ place, number: of }) => hands.flatMap((hand) => ring(place, of, up * hand))),
      text(WORDS.right, [middle, up * half], LETTERS),
      text(WORDS.left, [middle, -up * half], LETTERS),
      ...(stretch.from < 0 ? [text(WORDS.nose, [-ENDS / 2, half], LETTERS)] : []),
      ...(stretch.to > board.length ? [text(WORDS.tail, [board.length + ENDS / 2, half], LETTERS)] : []),
    ],
    captions: drawn.flatMap(({ level, points }): Caption[] =>
      points.length < 3 ? [] : [levelWords(points, bare(printLength(level, job.units)))],
    ),
  };
}

/** Rails, nose and tail are shown from above. */
function showsOn({ side }: ShortPlace, shown: Side): boolean {
  return side === shown || (shown === 'deck' && side !== 'bottom');
}

function ring(place: ShortPlace, number: number, up: number): Shape[] {
  const radius = shortRadius(place);
  const [x, y] = [place.at[0], up * place.at[1]];
  return [circle('keepout', x, y, radius), text(`${number}`, [x + radius + LETTERS / 2, y], LETTERS, 'left')];
}

/** What a line stands for, beside it where there is room; on some of many it is enough. */
function levelWords(points: readonly Point[], figure: string): Caption {
  const aside = widthOf(figure, SMALL) / 2 + SMALL / 3;
  const beside: Point[] = [
    [aside, 0],
    [-aside, 0],
    [0, SMALL],
    [0, -SMALL],
  ];
  const along = SHARES.map((share) => points[Math.floor(share * (points.length - 1))]!);
  return {
    places: along.flatMap(([x, y]) => beside.map(([dx, dy]) => [text(figure, [x + dx, y + dy], SMALL)])),
    optional: true,
  };
}

/** Where along a line its figure is tried. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];
