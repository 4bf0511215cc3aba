import { columnsOf, heading, row } from '../table.js';
import { printLength } from '../../length/length.js';
import { printAs, roundedAs, type Acted } from '../../length/rounded.js';
import type { Row } from '../../layup/layup.js';
import type { Plan } from '../../plan.js';
import type { Caption, Drawing, Shape } from '../drawing.js';
import { legendOf } from '../legendOf.js';
import { chambersOf } from '../mirror.js';
import type { Cell, TablePage, TableRow } from '../pages.js';
import { poleMarksOf, stationsOf, type PoleMark } from './poleMarks.js';
import { line, polygon, text } from '../primitives.js';
import { say, WORDS } from '../../words/say.js';

/** Half the width of the stick, mm, and how far its marks reach in from the edge. */
const HALF = 18;
const MARK = 14;
const STATION = 3;
const LETTERS = 5;
const SMALL = 3.5;
/** The middles of a mark's name and of its place, from the edge inward, mm. */
const NAME_IN = 4.5;
const PLACE_IN = 10;
/** Half the diagonal of a dot's lozenge on the pole, mm. */
const LOZENGE = 3;
/** How far words move off the middle line where others stand on it, mm. */
const MIDDLE_UP = 4.5;
/** An edge says its name every so often, mm: whoever holds the stick sees no more of it. */
const NAME_EVERY = 400;

/** One edge of the pole and the rows it serves. */
interface Edge {
  readonly name: string;
  readonly rows: readonly Row[];
  readonly marks: readonly PoleMark[];
  /** Whether it is the upper edge (1) or the lower (-1). */
  readonly up: 1 | -1;
}

/**
 * The story pole at full size, nose on the left: edge A above for the rows on the grid, edge B below for the shifted
 * ones, the board's stations along its middle. Marks are measured along the face, `x` = `s`.
 */
export function storyPole(plan: Plan): Drawing {
  const { length } = plan.board;
  const { units } = plan.job;
  const edges = edgesOf(plan);
  const corners = [
    [0, -HALF],
    [length, -HALF],
    [length, HALF],
    [0, HALF],
  ] as const;
  return {
    id: 'pole',
    title: WORDS.pole.title,
    notes: [WORDS.pole.notes],
    legend: legendOf('pole'),
    units,
    captions: [
      ...edges.flatMap((edge) => edgeWords(edge, plan)),
      ...dotsOnPole(plan).map(({ s, joints }) => inTheMiddle(say(WORDS.pole.dots, { joints }), s)),
      ...stationsOf(plan).map((x) => inTheMiddle(printLength(x, units), x)),
      { places: [[text(WORDS.nose, [3, 0], 5, 'left')], [text(WORDS.nose, [-3, 0], 5, 'right')]] },
      { places: [[text(WORDS.tail, [length - 3, 0], 5, 'right')], [text(WORDS.tail, [length + 3, 0], 5, 'left')]] },
    ],
    shapes: [
      polygon('outline', corners),
      ...edges.flatMap(({ marks, up }) =>
        marks.map(({ s }) => line('outline', [s, up * HALF], [s, up * (HALF - MARK)])),
      ),
      ...stationsOf(plan).map((x) => line('mark', [x, -STATION], [x, STATION])),
      ...dotsOnPole(plan).map(({ s }) => lozenge(s)),
    ],
  };
}

/** An edge's name, again and again along it, and what its marks are called and where they stand. */
function edgeWords({ name, rows, marks, up }: Edge, plan: Plan): Caption[] {
  const { length } = plan.board;
  const edge = say(WORDS.pole.edge, { edge: name, rows: rows.map(({ id }) => id).join(' ') });
  const names = Array.from({ length: Math.ceil(length / NAME_EVERY) }, (_, i): Caption => ({
    places: Array.from({ length: 20 }, (_, k) => [
      text(edge, [i * NAME_EVERY + 30 + 12 * k, up * (HALF - NAME_IN)], LETTERS, 'left'),
    ]),
    optional: i > 0,
  }));
  return [...marks.map(({ name: mark, s }) => besideMark(mark, printLength(s, plan.job.units), s, up)), ...names];
}

/** Words beside a mark on the pole's middle line: level with it, or over or under what else stands there. */
function inTheMiddle(words: string, x: number): Caption {
  const beside = [LOZENGE + 1, LOZENGE + 8, LOZENGE + 20].flatMap((off) =>
    [0, MIDDLE_UP, -MIDDLE_UP].flatMap((y) => [
      [text(words, [x + off, y], SMALL, 'left')],
      [text(words, [x - off, y], SMALL, 'right')],
    ]),
  );
  const over = [MIDDLE_UP + 1.5, -MIDDLE_UP - 1.5].map((y) => [text(words, [x, y], SMALL)]);
  return { places: [...beside, ...over], beside: [x, 0] };
}

/**
 * A mark's name and place to its right, or to its left where a seam is in the way, or one on either side; a little
 * further off where both are.
 */
function besideMark(name: string, place: string, s: number, up: 1 | -1): Caption {
  const at = (words: string, off: number, inward: number, height: number) =>
    text(words, [s + off, up * (HALF - inward)], height, off > 0 ? 'left' : 'right');
  const sides = [
    [1, -1],
    [1, 1],
    [-1, -1],
    [-1, 1],
  ] as const;
  return {
    places: [2, 6, 10].flatMap((off) =>
      sides.map(([named, placed]) => [
        at(name, named * off, NAME_IN, LETTERS),
        at(place, placed * off, PLACE_IN, SMALL),
      ]),
    ),
    beside: [s, up * (HALF - MARK / 2)],
  };
}

/** Where glue dots lie along their joints, from the nose tip, each place once with the joints that have one there. */
function dotsOnPole({ glue }: Plan): { s: number; joints: string }[] {
  const places = new Map<string, { s: number; joints: string[] }>();
  for (const { s, joint } of [...glue.dots].sort((a, b) => a.s - b.s)) {
    const key = s.toFixed(1);
    const place = places.get(key) ?? { s, joints: [] };
    if (!place.joints.includes(joint)) place.joints.push(joint);
    places.set(key, place);
  }
  return [...places.values()].map(({ s, joints }) => ({ s, joints: joints.join(' ') }));
}

const lozenge = (s: number): Shape =>
  polygon('dot', [
    [s - LOZENGE, 0],
    [s, -LOZENGE],
    [s + LOZENGE, 0],
    [s, LOZENGE],
  ]);

function edgesOf(plan: Plan): Edge[] {
  return WORDS.pole.edges.flatMap((name, parity) => {
    const rows = plan.layup.rows.filter((row) => row.parity === parity);
    const up = name === WORDS.pole.edges[0] ? 1 : -1;
    return rows.length > 0 ? [{ name, rows, marks: poleMarksOf(plan, rows[0]!), up }] : [];
  });
}

/** The tape positions of all marks of the pole, edge by edge, then the stations. */
export function poleTable(plan: Plan): TablePage {
  const { units } = plan.job;
  const { length } = plan.board;
  const columns = WORDS.pole.columns;
  const rowAt = (name: string, at: number, rows: string) =>
    row(name, lengthCell(at, units), lengthCell(length - at, units), rows);
  return {
    kind: 'table',
    title: WORDS.pole.tableTitle,
    notes: WORDS.pole.tableNotes,
    columns: columnsOf(
      [columns.mark, 'text'],
      [columns.fromNose, 'number'],
      [columns.fromTail, 'number'],
      [columns.rows, 'text'],
    ),
    rows: [
      ...edgesOf(plan).flatMap(({ name, rows, marks }): TableRow[] => [
        heading(say(WORDS.pole.edgeHeading, { edge: name })),
        ...marks.map((mark) => rowAt(mark.name, mark.s, chambersAt(plan, rows, mark.place))),
      ]),
      heading(WORDS.pole.stations),
      ...stationsOf(plan).map((x) => rowAt(printLength(x, units), x, '')),
    ],
  };
}

function chambersAt(plan: Plan, rows: readonly Row[], place: number): string {
  return rows
    .flatMap((row) => chambersOf(plan, row).filter((chamber) => chamber.place === place))
    .map(({ id }) => id)
    .join(WORDS.joinWith);
}

/**
 * A length as it stands in a list: written in the job's units, counted in millimetres; the nearest step, or toward more
 * wall where somebody acts on it.
 */
export function lengthCell(mm: number, units: Plan['job']['units'], kind?: Acted): Cell {
  if (kind) return { value: roundedAs(kind, mm, units), text: printAs(kind, mm, units) };
  return { value: Math.round(mm * 1000) / 1000, text: printLength(mm, units) };
}
