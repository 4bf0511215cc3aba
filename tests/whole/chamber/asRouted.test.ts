import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { called } from '../../cli/called.js';
import { boardFolder } from '../../cli/files.js';
import { kernel, outsideOf, solidOfChamber } from '../../oracle/kernel.js';
import type { Job } from '../../../src/job/job.js';
import { readRouted, writeRouted } from '../../../src/job/parts/routed.js';
import type { RoutedRow } from '../../../src/job/spec/routed.js';
import { planOf, type Plan } from '../../../src/plan.js';
import { proofOf } from '../../../src/proof/proof.js';
import { verdictOf } from '../../../src/verdict/verdict.js';
import { sayFinding } from '../../../src/finding/say.js';
import { sampleJob } from '../../samples.js';

const job = sampleJob('mere-prone');
const plan = planOf(job);
const rowsWithChambers = [...new Set(plan.chambers.map(({ row }) => row))];

function asRows({ layup, chambers }: Plan, ids: readonly string[]): readonly RoutedRow[] {
  const rows = ids.map((id): RoutedRow => {
    const { origin, along } = layup.rows.find((row) => row.id === id)!.face;
    return { row: id, day: '2026-11-26', face: { origin, along }, chambers: chambers.filter(({ row }) => row === id) };
  });
  const read = readRouted(writeRouted(rows));
  if (typeof read === 'string') throw new Error(read);
  return read;
}

const cuts = ({ chambers }: Plan, rows: readonly string[]) =>
  chambers.filter(({ row }) => rows.includes(row)).map(({ id, depth, profile }) => ({ id, depth, profile }));

/** Other walls, webs, places, dots, and a board that came out thinner. */
const later: Readonly<Record<string, (job: Job) => Job>> = {
  'walls and webs are changed': (was) => ({
    ...was,
    chambers: { ...was.chambers, deckSkin: was.chambers.deckSkin - 1, web: was.chambers.web + 8 },
  }),
  'the grid is moved': (was) => ({ ...was, chambers: { ...was.chambers, pitch: was.chambers.pitch * 1.17 } }),
  'the board was measured after shaping': (was) => ({
    ...was,
    shaped: [
      {
        kind: 'thickness',
        x: was.board.length / 2,
        y: 0,
        value: thicknessAt(plan, was.board.length / 2) + 2,
        off: 'deck',
      },
    ],
  }),
};

describe('rows that are routed', () => {
  test.each(Object.entries(later))('stay as they were planned then, whatever comes: %s', (_, change) => {
    for (const row of rowsWithChambers) {
      const now = planOf({ ...change(job), routed: asRows(plan, [row]) });
      const [then, kept] = [cuts(plan, [row]), cuts(now, [row])];
      expect(kept.map(({ id }) => id)).toEqual(then.map(({ id }) => id));
      for (const [i, { profile, depth }] of kept.entries()) {
        for (const [k, at] of profile.entries())
          for (const axis of [0, 1] as const) expect(at[axis]).toBeCloseTo(then[i]!.profile[k]![axis], 5);
        for (const end of [0, 1] as const) expect(depth[end]).toBeCloseTo(then[i]!.depth[end], 5);
      }
      expect(now.blocks.filter((block) => block.row === row).map(({ id }) => id)).toEqual(then.map(({ id }) => id));
    }
  });

  test('change nothing where nothing is changed: every figure of the plan, and its verdict', () => {
    const now = planOf({ ...job, routed: asRows(plan, rowsWithChambers) });
    expect(now.chambers.map(({ id }) => id)).toEqual(plan.chambers.map(({ id }) => id));
    for (const [i, { wall, volume }] of now.chambers.entries()) {
      // Walls were written to a millionth of a millimetre; both are lower bounds of the same distance.
      for (const patch of ['deck', 'bottom', 'rail'] as const)
        expect(Math.abs(wall[patch] - plan.chambers[i]!.wall[patch])).toBeLessThan(0.01);
      expect(volume).toBeCloseTo(plan.chambers[i]!.volume, 5);
    }
    expect(verdictOf(now, proofOf(now))).toEqual(verdictOf(plan, proofOf(plan)));
  });

  test('are proved anew on the board as it is, and the place is named where a wall is too thin now (manifold-3d)', async () => {
    const k = await kernel();
    const x = job.board.length / 2;
    const thinner: Job = {
      ...job,
      routed: asRows(plan, rowsWithChambers),
      shaped: [
        { kind: 'thickness', x, y: 0, value: thicknessAt(plan, x) - 4, off: 'deck' },
      ] as unknown as Job['shaped'] & object,
    };
    const now = planOf(thinner);
    const { stands, refusals } = verdictOf(now, proofOf(now));
    expect(stands).toBe(false);
    const outside = outsideOf(k, now.board.mesh);
    const thin = now.chambers.filter((chamber) => {
      const { face } = now.layup.rows.find(({ id }) => id === chamber.row)!;
      const solid = solidOfChamber(k, face, chamber.profile, chamber.depth);
      const gap = outside.gap(solid, 60);
      solid.delete();
      // The kernel knows no patches: its gap is the thinnest of all three.
      expect(Math.min(...Object.values(chamber.wall))).toBeLessThanOrEqual(gap + 0.01);
      return gap < Math.min(...Object.values(now.asked)) - 0.05;
    });
    outside.free();
    expect(thin.length).toBeGreaterThan(0);
    for (const { id } of thin) expect(refusals.map(sayFinding).join('\n')).toContain(id);
  });

  test('refuse a glue-up in which their face is elsewhere, or is not there', () => {
    const [row] = rowsWithChambers;
    const [made] = asRows(plan, [row!]);
    const moved = planOf({ ...job, routed: [{ ...made!, face: { ...made!.face, origin: [0, 12.5] } }] });
    expect(verdictOf(moved, proofOf(moved)).refusals.map(sayFinding).join()).toMatch(/its face elsewhere now/);
    const gone = planOf({ ...job, routed: [{ ...made!, row: 'R9' }] });
    expect(verdictOf(gone, proofOf(gone)).refusals.map(sayFinding).join()).toMatch(
      /R9: routed since 2026-11-26, and no row of this glue-up/,
    );
  });
});

describe('chamberwright routed', () => {
  test('writes the rows beside the job, keeps them in every plan, and takes them out again', async () => {
    const { job: file, folder } = boardFolder();
    const rows = async () =>
      JSON.parse((await called(['plan', file, '--json'])).out) as {
        chambers: { row: string; profile: unknown; depth: unknown }[];
      };
    const before = (await rows()).chambers;
    const row = before[0]!.row;
    const made = await called(['routed', file, row.toLowerCase()]);
    expect(made).toMatchObject({ code: 0 });
    expect(made.out).toContain('routed: fell-short.routed.csv');
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, `${text}\nrouted: fell-short.routed.csv\n`.replace(/deckSkin: [^,}\n]+/, 'deckSkin: 9 mm'));
    const of = (all: typeof before) =>
      all.filter((chamber) => chamber.row === row).map(({ profile, depth }) => ({ profile, depth }));
    expect(of((await rows()).chambers)).toEqual(of(before));
    expect((await called(['plan', file])).out).toContain(`${row}: routed since`);
    expect(await called(['routed', file, row, '--undo'])).toMatchObject({ code: 0 });
    expect((await called(['plan', file])).out).not.toContain('routed since');
    expect(readFileSync(join(folder, 'fell-short.routed.csv'), 'utf8')).toMatch(/^row,routed,/);
  });

  test('says what is wrong: no row of that name, a file that was spoilt or is not there', async () => {
    const { job: file, folder } = boardFolder();
    expect((await called(['routed', file, 'R9'])).err).toMatch(/R9: there is no such row → among/);
    expect((await called(['routed', file])).err).toContain('it is not said which job and which rows → name them');
    writeFileSync(file, `${readFileSync(file, 'utf8')}\nrouted: fell-short.routed.csv\n`);
    expect((await called(['plan', file])).err).toContain('there is no file "fell-short.routed.csv" beside the job');
    writeFileSync(join(folder, 'fell-short.routed.csv'), 'row,routed\nR1,2026-11-26\n');
    const spoilt = await called(['plan', file]);
    expect(spoilt.code).toBe(2);
    expect(spoilt.err).toMatch(/"fell-short.routed.csv", line 1: the columns .* are missing/);
  });
});

function thicknessAt({ job: { board } }: Plan, x: number): number {
  const after = board.profile.findIndex((station) => station.x >= x);
  const [a, b] = [board.profile[Math.max(0, after - 1)]!, board.profile[after]!];
  const share = b.x === a.x ? 0 : (x - a.x) / (b.x - a.x);
  return a.thickness + share * (b.thickness - a.thickness);
}
