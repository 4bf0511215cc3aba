import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { readJob } from '../../../src/job/whole/read.js';
import { parseLength } from '../../../src/length/length.js';
import { MM_PER_INCH, type Units } from '../../../src/length/units.js';
import { jobFiles } from '../../random/jobFile.js';
import { besideSamples, textOf } from '../readSample.js';

/** What a tired hand makes of a number read off a rule. */
const SLIPS: Readonly<Record<string, (shown: number) => number>> = {
  'first digit lost': (v) => Number(`0${Math.trunc(v)}`.slice(2) || '0') + (v % 1),
  'last digit lost': (v) => Math.trunc(v / 10),
  'digit put before': (v) => Number(`1${Math.trunc(v)}`) + (v % 1),
  'digit added': (v) => Math.trunc(v) * 10 + 3,
  'ten times': (v) => v * 10,
  'a tenth': (v) => v / 10,
  'whole part lost': (v) => v % 1,
  'inches for millimetres': (v) => v * MM_PER_INCH,
  'millimetres for inches': (v) => v / MM_PER_INCH,
};

/**
 * Boards without rocker have tables of tenths of a millimetre: what changes a value by less than this, mm, makes no
 * other board.
 */
const LEAST = 3;

interface JobFile {
  readonly units: Units;
  readonly board: { outline?: [unknown, unknown][]; stations: Record<string, unknown>[] };
}

/** Every value of outline, rocker and foil, as it can be exchanged. */
function valuesOf({
  board,
  units,
}: JobFile): { kind: string; shown: number; set: (value: unknown) => void; old: unknown }[] {
  const shown = (written: unknown): number => {
    const read = parseLength(written as string | number, units);
    return read.ok ? (units === 'in' ? read.value / MM_PER_INCH : read.value) : NaN;
  };
  return [
    ...(board.outline ?? []).map((point) => ({
      kind: 'outline',
      shown: shown(point[1]),
      old: point[1],
      set: (v: unknown) => void (point[1] = v),
    })),
    ...board.stations.flatMap((station) =>
      ['bottom', 'thick'].flatMap((kind) =>
        kind in station
          ? [{ kind, shown: shown(station[kind]), old: station[kind], set: (v: unknown) => void (station[kind] = v) }]
          : [],
      ),
    ),
  ];
}

it('of slips that change a value by a tenth of its table or more, nine in ten are refused or told, and what is right is never told', () => {
  const boards = Number(process.env.SLIPS ?? 0) > 0 ? 60 : 2;
  const random = fc.sample(jobFiles, {
    numRuns: boards,
    seed: Number(process.env.SEED ?? 16_002),
  }) as unknown as JobFile[];
  const samples = [
    'samples/tarn-rescue.yaml',
    'samples/mere-prone.yaml',
    'samples/fell-short.yaml',
    'templates/starter.yaml',
  ];
  const files = [...samples.map((path) => parse(textOf(path)) as JobFile), ...random];
  const read = (file: JobFile) => readJob(JSON.stringify(file), 'job.yaml', besideSamples);
  const table: Record<string, { slips: number; refused: number; told: number; silent: number }> = {};
  let all = 0;
  let caught = 0;
  for (const file of files) {
    const right = read(file);
    if (!right.job) continue;
    expect(
      (right.job.doubts ?? []).filter(({ where: { path } }) => path.startsWith('board.') && path !== 'board.stations'),
    ).toEqual([]);
    const values = valuesOf(file);
    for (const { kind, shown, old, set } of values) {
      const size = Math.max(...values.filter((each) => each.kind === kind).map((each) => Math.abs(each.shown)));
      for (const [name, slip] of Object.entries(SLIPS)) {
        const wrong = slip(shown);
        if (!(Math.abs(wrong - shown) >= Math.max(size / 10, file.units === 'in' ? LEAST / MM_PER_INCH : LEAST)))
          continue;
        set(`${wrong} ${file.units}`);
        const { job } = read(file);
        set(old);
        const counts = (table[name] ??= { slips: 0, refused: 0, told: 0, silent: 0 });
        const verdict = !job ? 'refused' : job.doubts ? 'told' : 'silent';
        counts.slips++;
        counts[verdict]++;
        all++;
        if (verdict !== 'silent') caught++;
      }
    }
  }
  if (process.env.SLIPS !== undefined) console.table(table);
  expect(all).toBeGreaterThan(500);
  expect(caught / all).toBeGreaterThan(0.9);
}, 1_200_000);
