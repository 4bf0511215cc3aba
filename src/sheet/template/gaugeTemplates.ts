import words from '../../../templates/templates.json' with { type: 'json' };
import type { Board } from '../../board/board.js';
import { pointsAcross } from '../../board/surface.js';
import type { Point } from '../../contour/point.js';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import { say } from '../../words/say.js';
import type { Caption, Drawing, Part } from '../drawing.js';
import { layInRows } from '../layInRows.js';
import { legendOf } from '../legendOf.js';
import { widthOf, wrapped } from '../lettering.js';
import { polygon, text } from '../primitives.js';
import { isNew, LETTERS, SMALL } from './marks.js';
import type { TemplateSide } from './outlineTemplate.js';
import { gaugeStations } from './stations.js';

/** The least wood around the board, and what the saw has between the two gauges of a station, mm. */
const LEAST = 25;
const APART = 6;
/** Which gauge it is, the first that fits, mm: read across the shop. */
const NAME = [10, 7, LETTERS] as const;
/** Words begin so far from the centreline, or further on by steps, mm. */
const FROM_MIDDLE = 12;
const NARROW = 80;
const STEP = 13;
/** A gauge longer than this says at both ends which it is, mm. */
const LONG = 170;

/**
 * Gauges for deck and bottom of one half at every station, at full size; centreline on the left. The two of a station
 * lie one over the other, as they are held to the board, so that nobody pairs them wrongly.
 */
export function gaugeTemplates(board: Board, units: Units, side: TemplateSide): Drawing {
  const code = side === 'left' ? 0 : 1;
  const stations = gaugeStations(board.length, units).filter((x) => x < board.surface.outlines[code].notchAt);
  const apart = layInRows(stations.map((x) => gaugesAt(board, units, side, code, x)));
  const { gauges } = words;
  return {
    id: side === 'both' ? 'gauges' : `gauges-${side}`,
    title: gauges.title,
    notes: [gauges.notes],
    legend: legendOf('template'),
    shapes: apart.flatMap(({ shapes }) => shapes),
    captions: apart.flatMap(({ captions }) => captions),
    apart,
  };
}

/** `y` outward from the centreline, heights over the bottom at the centreline there; the deck's gauge lies higher. */
function gaugesAt({ surface, grid }: Board, units: Units, side: TemplateSide, code: 0 | 1, x: number): Part {
  const { vs, apex } = grid;
  const found = new Float64Array(3 * vs.length);
  pointsAcross(surface, code, x, surface.lengthwise(vs).at(x, code), found, 0);
  const base = surface.bottom(x);
  const points = Array.from(vs, (_, i): Point => [Math.abs(found[3 * i + 1]!), found[3 * i + 2]! - base]);
  const [bottom, deck] = [points.slice(0, apex + 1), points.slice(apex).map(([y, z]): Point => [y, z + APART])];
  const [half] = points[apex]!;
  const low = Math.min(...bottom.map(([, z]) => z)) - LEAST;
  const high = Math.max(...deck.map(([, z]) => z)) + LEAST;
  const out = half + LEAST;
  const { gauges } = words;
  const values = { at: printLength(x, units), side: gauges.side[side] };
  const figures = say(gauges.figures, {
    half: printLength(half, units),
    thickness: printLength(surface.thickness(x), units),
  });
  const corner = (rail: number, y: number): Point[] => [
    [out, rail],
    [out, y],
    [0, y],
  ];
  return {
    name: say(gauges.name, values),
    shapes: [
      polygon('cut', [...bottom, ...corner(bottom.at(-1)![1], low)].filter(isNew)),
      polygon('cut', [...deck, ...corner(deck[0]![1], high).reverse()].filter(isNew)),
    ],
    captions: [
      ...wordsOn(say(gauges.bottom, values), figures, low, low + LEAST, out),
      ...wordsOn(say(gauges.deck, values), figures, high - LEAST, high, out),
    ],
  };
}

/** What stands on a gauge, in the straight strip of wood between two heights that every gauge has. */
function wordsOn(name: string, figures: string, low: number, high: number, out: number): Caption[] {
  // Words stand where no seam is.
  const starts = Array.from({ length: Math.ceil(out / STEP) }, (_, i) => FROM_MIDDLE + STEP * i);
  const within = (words: string, letters: number) =>
    starts.filter((from, i) => i === 0 || from + widthOf(words, letters) < out - 2);
  const places = (ends: (from: readonly number[]) => readonly number[]) =>
    NAME.flatMap((letters) =>
      ends(within(name, letters)).map((from) => [text(name, [from, high - 2.5 - letters / 2], letters, 'left')]),
    );
  const lined = (lines: readonly string[]) =>
    within(lines[0]!, SMALL).map((from) =>
      lines.map((line, i) =>
        text(line, [from, low + 2 + SMALL / 2 + 1.5 * SMALL * (lines.length - 1 - i)], SMALL, 'left'),
      ),
    );
  return [
    { places: places((starts) => starts) },
    ...(out > LONG ? [{ places: places((starts) => [...starts].reverse()), optional: true }] : []),
    { places: [...lined([figures]), ...lined(wrapped(figures, NARROW, SMALL))] },
    {
      places: [4, 6, 8].map((from) => [
        text(words.gauges.centre, [from, (low + high) / 2], 2.5, 'centre', { angleInDegrees: 90 }),
      ]),
    },
  ];
}
