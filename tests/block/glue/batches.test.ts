import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clampPlaces, glueFor, gluePlan } from '../../../src/block/glue/batches.js';
import type { GlueBlock, GlueSetting } from '../../../src/block/glue/batches.js';
import { glueFinding } from '../../../src/block/glue/glueFinding.js';
import { sayFinding } from '../../../src/finding/say.js';
import { evenly } from '../../evenly.js';

// Open time 20 to 30 minutes and clamps 8 to 12 in apart: two shop bulletins and a maker's guide on moisture-cure
// polyurethane glue. Spread 100 to 250 g/m²: from memory.
const setting: GlueSetting = { openTime: 20, minutesPerBlock: 3, clampSpacing: 250, spread: 200, loss: 0.15 };

function row(name: string, count: number, length = 200, web = 25): GlueBlock[] {
  return Array.from({ length: count }, (_, i) => {
    const from = 300 + i * (length + web);
    return { id: `${name}-${i + 1}`, row: name, from, to: from + length, area: 50_000 };
  });
}

describe('batches', () => {
  // 20 min at 3 min a block is 6 blocks; 17 blocks are three batches, and 6 + 6 + 5 is as equal as they get.
  test('hold what the open time allows, as equal as can be, from the nose', () => {
    const { batches } = gluePlan(row('R1', 17), setting);
    expect(batches.map(({ blocks }) => blocks.length)).toEqual([6, 6, 5]);
    expect(batches.flatMap(({ blocks }) => blocks)).toEqual(row('R1', 17).map(({ id }) => id));
    for (const { minutes } of batches) expect(minutes).toBeLessThanOrEqual(20);
  });

  test('never mix two rows, which are clamped separately', () => {
    const { batches } = gluePlan([...row('R1', 2), ...row('L1', 2)], setting);
    expect(batches.map(({ number, row: of, blocks }) => [number, of, blocks.length])).toEqual([
      [1, 'R1', 2],
      [2, 'L1', 2],
    ]);
  });

  test('take every block once, within the open time, on any job', () => {
    const anyRow = fc.record({ name: fc.constantFrom('L1', 'L2', 'R1'), count: fc.integer({ min: 0, max: 30 }) });
    fc.assert(
      fc.property(
        fc.uniqueArray(anyRow, { selector: ({ name }) => name }),
        evenly(1, 60),
        evenly(0.1, 1),
        (rows, openTime, part) => {
          const blocks = rows.flatMap(({ name, count }) => row(name, count));
          const { batches } = gluePlan(blocks, { ...setting, openTime, minutesPerBlock: openTime * part });
          expect(batches.flatMap(({ blocks: ids }) => ids).sort()).toEqual(blocks.map(({ id }) => id).sort());
          for (const { minutes, blocks: ids } of batches) {
            expect(ids.length).toBeGreaterThan(0);
            expect(minutes).toBeLessThanOrEqual(openTime * (1 + 1e-6));
          }
        },
      ),
      { seed: 5, numRuns: 200 },
    );
  });
});

describe('glue', () => {
  // A film of 6 mil over 267 ft² is a US gallon of 231 in³ (volume alone): 0.1524 mm over 24.805 m² is 3.7854 l.
  test('a gallon covers 267 ft² six mil thick', () => {
    const gramsPerLitre = 1100;
    const spread = 0.1524 * gramsPerLitre;
    const grams = glueFor(267 * 0.3048 ** 2 * 1e6, { spread, loss: 0 });
    expect(grams / gramsPerLitre).toBeCloseTo(3.7854, 1);
  });

  // Four blocks of 0.05 m² at 200 g/m² are 40 g, with 15 % loss 46 g.
  test('of a batch is its area times the spread, and what stays in the cup', () => {
    expect(gluePlan(row('R1', 4), setting).glue).toBeCloseTo(46, 9);
  });
});

describe('clamps', () => {
  // Four blocks of 200 with webs of 25 run 875 mm: four clamps at 250 at most, every 218.75 mm.
  test('are even, no further apart than asked', () => {
    expect(clampPlaces(row('R1', 4), 250)).toEqual([300 + 109.375, 300 + 328.125, 300 + 546.875, 300 + 765.625]);
  });

  test('hold every block, however short', () => {
    const run = [
      { from: 0, to: 400 },
      { from: 425, to: 455 },
      { from: 480, to: 880 },
    ];
    const places = clampPlaces(run, 300);
    for (const { from, to } of run) expect(places.some((place) => place >= from && place <= to)).toBe(true);
    places.slice(1).forEach((place, i) => expect(place - places[i]!).toBeLessThanOrEqual(300));
  });

  test('the plan says how many the largest batch takes', () => {
    expect(gluePlan([...row('R1', 4), ...row('R2', 2)], setting).clamps).toBe(4);
  });
});

describe('numbers that allow no gluing', () => {
  const said = (change: Partial<GlueSetting>) =>
    gluePlan(row('R1', 3), { ...setting, ...change }).faults.map((fault) => sayFinding(glueFinding(fault)));

  test('a block that takes longer than the glue stays open', () => {
    expect(said({ minutesPerBlock: 25 })).toEqual([
      'Gluing: one block takes 25 min, the glue stays open for 20 min → a slower glue, or two pairs of hands so that a block takes at most 20 min',
    ]);
  });

  test('no numbers', () => {
    expect(said({ spread: 0, loss: NaN })).toEqual([
      'Gluing: the spread of the glue is not a number above 0; no batches are planned until it is → give one',
      'Gluing: the loss of glue is not a number of 0 or more; no batches are planned until it is → give one',
    ]);
  });
});
