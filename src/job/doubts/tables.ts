import type { OutlineSpec } from '../spec/board.js';
import type { BoardSpec } from '../spec/board.js';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { BoardFile } from '../parts/board.js';
import type { OffsetStation } from '../parts/offsets.js';
import type { Path, Say } from '../mistake/say.js';
import { outliersAlong, type Bearing } from './outliers.js';
import { sectionsInDoubt } from './sections.js';

/**
 * What a board's features bear before a value is told: with these the samples, the 300 boards of `tests/random` and
 * boards with square noses, swallow tails, wings and sharply kicked ends are quiet. The last of the rocker may be
 * kicked up, and an outline may end square.
 */
const BEARING: Readonly<Record<'outline' | 'bottom' | 'thick', Bearing>> = {
  outline: { inside: 0.06, next: 0.08, end: 0.2 },
  bottom: { inside: 0.06, next: 0.15, end: 0.5 },
  thick: { inside: 0.06, next: 0.1, end: 0.2 },
};
/** How exactly a builder reads a rule, mm. */
const EXACT = 0.5;

/**
 * Tells what lies far from its neighbours in the tables of a board: outline, rocker and foil, measured sections. The
 * job is planned as written.
 */
export function tablesInDoubt(
  file: BoardFile,
  table: readonly OffsetStation[],
  board: BoardSpec,
  units: Units,
  say: Say,
): void {
  const of = { file, table, board, units, say };
  outlineInDoubt(board.right, 'half of the width', of, file.outline ? ['outline'] : undefined);
  if (board.left) outlineInDoubt(board.left, 'half of the width', of, ['left', 'outline']);
  profileInDoubt(of);
  sectionsInDoubt(table, units, say.at('offsets'));
}

interface Tables {
  readonly file: BoardFile;
  readonly table: readonly OffsetStation[];
  readonly board: BoardSpec;
  readonly units: Units;
  readonly say: Say;
}

function outlineInDoubt(outline: OutlineSpec, what: string, of: Tables, path: Path | undefined): void {
  const { length } = of.board;
  const { nose, tail, points } = outline;
  const chain = [
    { x: 0, half: nose.kind === 'square' ? nose.half : 0 },
    ...points.filter(({ x }) => x > 0 && x < length),
    { x: length, half: 'half' in tail ? tail.half : 0 },
  ];
  if (!chain.every(({ x, half }) => Number.isFinite(x + half))) return;
  // A round tip stands up across the board: over this angle it runs straight.
  const turn = chain.map(({ x }) => Math.acos(1 - (2 * x) / length));
  const halves = chain.map(({ half }) => half);
  const side = path?.[0] === 'left' ? ['left'] : [];
  for (const { index, expected } of outliersAlong(turn, halves, EXACT, BEARING.outline)) {
    const { x, half } = chain[index]!;
    const i = points.findIndex((point) => point.x === x);
    const at = i < 0 ? [...side, index === 0 ? 'nose' : 'tail'] : path ? [...path, i, 1] : whereAt(x, of, 'width');
    tell(at, what, x, half, Math.max(0, expected), of);
  }
}

function profileInDoubt(of: Tables): void {
  const { profile } = of.board;
  if (!profile.every(({ x, bottom, thickness }) => Number.isFinite(x + bottom + thickness))) return;
  const at = profile.map(({ x }) => x);
  const kinds = [
    { key: 'bottom', what: 'the bottom', values: profile.map(({ bottom }) => bottom), lift: liftOf(of) },
    { key: 'thick', what: 'the thickness', values: profile.map(({ thickness }) => thickness), lift: 0 },
  ] as const;
  for (const { key, what, values, lift } of kinds) {
    for (const { index, expected } of outliersAlong(at, values, EXACT, BEARING[key])) {
      const x = at[index]!;
      tell(whereAt(x, of, key), what, x, values[index]! + lift, expected + lift, of);
    }
  }
}

/**
 * Heights of a job are over the builder's own base line, those of a board over its lowest point: the difference, mm.
 */
function liftOf({ file, table, board }: Tables): number {
  const tabled = table[0]?.points[0]?.z;
  const written = table.length > 0 ? tabled : file.stations.find(({ bottom }) => bottom !== undefined)?.bottom;
  const x =
    table.length > 0
      ? table[0]!.x
      : xOf(
          file.stations.findIndex(({ bottom }) => bottom !== undefined),
          { file, board },
        );
  return (written ?? 0) - (board.profile.find((station) => station.x === x)?.bottom ?? 0);
}

function xOf(i: number, { file, board }: Pick<Tables, 'file' | 'board'>): number {
  const station = file.stations[i];
  return station?.at ?? board.length - (station?.fromTail ?? NaN);
}

/** Where the value at `x` is written: at a station, or in the table of offsets. */
function whereAt(x: number, of: Tables, key: string): Path {
  const i = of.file.stations.findIndex((_, s) => Math.abs(xOf(s, of) - x) < SAME);
  if (i < 0) return ['offsets'];
  const station = of.file.stations[i]!;
  return ['stations', i, key === 'width' && station.width === undefined ? 'half' : key];
}

/** Places nearer than this are one, mm. */
const SAME = 1e-3;

function tell(
  path: Path,
  what: string,
  x: number,
  value: number,
  expected: number,
  { table, units, say }: Tables,
): void {
  const length = (mm: number) => printLength(mm, units);
  const line = path[0] === 'offsets' ? table.find((station) => station.x === x)?.line : undefined;
  const inTable = line === undefined ? '' : `, line ${line} of the table`;
  say.warning(
    path,
    `${what} at ${length(x)} from the nose${inTable} is ${length(value)}; by its neighbours it would be about ${length(expected)}`,
    'measure and read it again; until then it is planned as written',
  );
}
