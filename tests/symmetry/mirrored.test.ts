import { layupOf } from '../../src/layup/layupOf.js';
import { describe, expect, test } from 'vitest';
import { carvingIn, drawnPlaces, gathered } from '../../src/chamber/chambers.js';
import { carvedAround } from '../../src/dot/carvedAround.js';
import type { GlueSide } from '../../src/dot/dot.js';
import { glueOf } from '../../src/dot/glueOf.js';
import { placedGlue } from '../../src/dot/placedGlue.js';
import { planOf } from '../../src/plan.js';
import { sampleJob } from '../samples.js';

describe('the left side of a board that is alike on both', () => {
  const job = sampleJob('tarn-rescue');
  const half = planOf(job);
  const whole = fromRailToRail();

  /** The same board planned from rail to rail, without the short cut of a mirror. */
  function fromRailToRail() {
    const { board, trees } = half;
    const layup = layupOf(job.glueUp, board.length);
    const carving = carvingIn(board, layup, trees, job);
    const places = drawnPlaces(carving);
    const placed = placedGlue(places, board, layup, trees, job);
    const carved = carvedAround(places, carving, placed.keeps, job.dots.clearance);
    const { glue, notes } = glueOf(carved, placed, job.dots.clearance);
    return { glue, ...gathered(carved.rows, carving, notes) };
  }

  const outer = (sides: readonly GlueSide[]) =>
    sides.filter(({ row }) => row !== 'C1').sort((a, b) => (a.row < b.row ? -1 : 1));

  test('names its chambers, dots and notes as a plan of both sides does', () => {
    // The central row is planned from its right face only; order aside, what lies beside a dot, and what is in a
    // chamber's way, is the same.
    const named = ({ chambers, webs, notes, glue }: typeof whole) => ({
      chambers: chambers.map(({ id, row, place }) => `${id} of ${row}, ${place}`),
      webs: webs.map(({ row, between }) => `${row}: ${between.join()}`),
      dots: glue.dots.map(({ id, joint, sides }) => `${id} on ${joint}: ${JSON.stringify(outer(sides))}`).sort(),
      losses: glue.losses.map(({ row, place, by }) => `${row} ${place} ${[...by].sort().join()}`).sort(),
      notes: notes
        .filter(({ kind, why }) => kind !== 'rout' || why === 'cut-short')
        .map(({ where, row, place, why, by }) => `${where} ${row} ${place} ${why} ${[...by].sort().join()}`)
        .sort(),
    });
    expect(named(half)).toEqual(named(whole));
    expect(half.glue.losses.some(({ row }) => row === 'L3')).toBe(true);
  });

  test('says the keep-out on the left, not its mirror image on the right', () => {
    const handle = (name: string, y: number) => ({ kind: 'disc' as const, name, x: 1400, y, radius: 60 });
    const keepOuts = [...job.keepOuts, handle('handle left', -200), handle('handle right', 200)];
    const { notes } = planOf({ ...job, keepOuts });
    const kept = notes.filter(({ why, row }) => why === 'keep-out' && row?.startsWith('L'));
    expect(kept.length).toBeGreaterThan(0);
    for (const { by } of kept) for (const name of by) expect(name).toBe('handle left');
  });
});
