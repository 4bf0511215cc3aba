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
import { wrapped } from '../lettering.js';
import { polygon, text } from '../primitives.js';
import { isNew, LETTERS, SMALL } from './marks.js';
import type { TemplateSide } from './outlineTemplate.js';
import { gaugeStations } from './stations.js';

/** The least wood around the board, mm. */
const LEAST = 25;
/** Words begin so far from the centreline, or further on by steps, mm. */
const FROM_MIDDLE = 12;
const NARROW = 80;
const STEP = 13;

/** Gauges for deck and bottom of one half at every station, at full size, each on its own; centreline on the left. */
export function gaugeTemplates(board: Board, units: Units, side: TemplateSide): Drawing {
  const code = side === 'left' ? 0 : 1;
  const stations = gaugeStations(board.length, units).filter((x) => x < board.surface.outlines[code].notchAt);
  const apart = layInRows(stations.flatMap((x) => gaugesAt(board, units, side, code, x)));
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

/** `y` outward from the centreline, heights over the bottom at the centreline there. */
function gaugesAt({ surface, grid }: Board, units: Units, side: TemplateSide, code: 0 | 1, x: number): Part[] {
  const { vs, apex } = grid;
  const found = new Float64Array(3 * vs.length);
  pointsAcross(surface, code, x, surface.lengthwise(vs).at(x, code), found, 0);
  const base = surface.bottom(x);
  const points = Array.from(vs, (_, i): Point => [Math.abs(found[3 * i + 1]!), found[3 * i + 2]! - base]);
  const [bottom, deck] = [points.slice(0, apex + 1), points.slice(apex)];
  const [half, rail] = points[apex]!;
  const low = Math.min(...bottom.map(([, z]) => z)) - LEAST;
  const high = Math.max(...deck.map(([, z]) => z)) + LEAST;
  const out = half + LEAST;
  // Words stand where no seam is.
  const starts = Array.from({ length: Math.ceil(out / STEP) }, (_, i) => FROM_MIDDLE + STEP * i);
  const { gauges } = words;
  const values = { at: printLength(x, units), side: gauges.side[side] };
  const figures = say(gauges.figures, {
    half: printLength(half, units),
    thickness: printLength(surface.thickness(x), units),
  });
  const short = wrapped(figures, NARROW, SMALL);
  const corner = (y: number): Point[] => [
    [out, rail],
    [out, y],
    [0, y],
  ];
  const part = (said: string, outline: readonly Point[], y: number): Part => {
    const name = say(said, values);
    const inLines = (lines: readonly string[], from: number) =>
      lines.map((line, i) => text(line, [from, y - LETTERS / 2 - 1.5 * SMALL * i], SMALL, 'left'));
    const captions: Caption[] = [
      { places: starts.map((from) => [text(name, [from, y + LETTERS], LETTERS, 'left')]) },
      { places: [...starts.map((from) => inLines([figures], from)), ...starts.map((from) => inLines(short, from))] },
      { places: [4, 6, 8].map((from) => [text(gauges.centre, [from, y], 2.5, 'centre', { angleInDegrees: 90 })]) },
    ];
    return { name, shapes: [polygon('cut', outline.filter(isNew))], captions };
  };
  return [
    part(gauges.bottom, [...bottom, ...corner(low)], low + LEAST / 2),
    part(gauges.deck, [...deck, ...corner(high).reverse()], high - LEAST / 2),
  ];
}
