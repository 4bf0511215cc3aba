import words from '../../../templates/templates.json' with { type: 'json' };
import type { Board } from '../../board/board.js';
import type { Point } from '../../contour/point.js';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import { say } from '../../words/say.js';
import type { Caption, Drawing } from '../drawing.js';
import { legendOf } from '../legendOf.js';
import { line, polygon, text } from '../primitives.js';
import { alongMark, isNew, LETTERS } from './marks.js';
import { templateStations } from './stations.js';

/** The least wood between a curve and the straight edge, mm. */
const LEAST = 15;
/** Names along a template, mm. */
const NAMES = 700;

/**
 * Bottom and deck along the centreline at full size, nose on the left, each as the template that is held against it.
 * They lie as far apart as the board is thick.
 */
export function rockerTemplate(board: Board, units: Units): Drawing {
  const { surface, grid, length } = board;
  const end = Math.min(...surface.outlines.map(({ notchAt }) => notchAt));
  const xs = [...Array.from(grid.xs).filter((x) => x < end), end];
  const bottom = xs.map((x): Point => [x, surface.bottom(x)]);
  const deck = xs.map((x): Point => [x, surface.bottom(x) + surface.thickness(x)]);
  const low = Math.min(...bottom.map(([, z]) => z)) - LEAST;
  const high = Math.max(...deck.map(([, z]) => z)) + LEAST;
  const stations = templateStations(length, units).filter((x) => x < end);
  const print = (mm: number) => printLength(mm, units);
  const { rocker } = words;
  const parts = [
    { name: rocker.bottom, edge: low, curve: (x: number) => surface.bottom(x) },
    { name: rocker.deck, edge: high, curve: (x: number) => surface.bottom(x) + surface.thickness(x) },
  ];
  return {
    id: 'rocker',
    title: rocker.title,
    name: rocker.title,
    notes: [rocker.notes],
    legend: legendOf('template'),
    units,
    shapes: [
      polygon('cut', ([[0, low], [end, low], ...[...bottom].reverse()] as Point[]).filter(isNew)),
      polygon('cut', ([[0, high], ...deck, [end, high]] as Point[]).filter(isNew)),
      ...parts.flatMap(({ edge, curve }) => stations.map((x) => line('mark', [x, edge], [x, curve(x)]))),
    ],
    captions: parts.flatMap(({ name, edge, curve }): Caption[] => [
      ...stations.map((x) => {
        const [from, to] = [Math.min(edge, curve(x)), Math.max(edge, curve(x))];
        return alongMark(say(rocker.station, { at: print(x), depth: print(to - from) }), x, from, to);
      }),
      ...Array.from({ length: Math.ceil(end / NAMES) }, (_, i): Caption => {
        const y = (s: number) => edge + Math.sign(curve(s) - edge) * (LETTERS / 2 + 1.5);
        const at = Array.from({ length: 12 }, (_, k) => 40 + i * NAMES + 25 * k);
        const said = i === 0 ? `${words.nose} · ${name}` : name;
        return { places: at.map((s) => [text(said, [s, y(s)], LETTERS, 'left')]) };
      }),
    ]),
  };
}
