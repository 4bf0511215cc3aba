import { Clipper, EndType, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineOnRow, obstacleOf } from '../../src/dot/around.js';
import type { Spot } from '../../src/dot/spot.js';
import { farOn, nearOn, rowTo } from './rows.js';
import { evenly } from '../evenly.js';

const SEED = 20261127;
/** Clipper counts in whole numbers: thousandths of a millimetre here; its round ends are drawn as straight sides. */
const SCALE = 1000;
const NEAR = 0.05;

/** Glue as it lies on the joint, grown by its clearance: what it takes along and up, by clipper2-ts. */
function boundsOf({ from, to, radius }: Spot, clearance: number) {
  const path = [from, to].map(([x, y]) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) }));
  const line = from === to ? [path[0]!] : path;
  const grown = Clipper.inflatePaths([line], (radius + clearance) * SCALE, JoinType.Round, EndType.Round, 2, 5).flat();
  const [x, y] = [grown.map((at) => at.x / SCALE), grown.map((at) => at.y / SCALE)];
  return { from: Math.min(...x), to: Math.max(...x), low: Math.min(...y), high: Math.max(...y) };
}

const place = fc.tuple(evenly(0, 3000), evenly(-20, 180));
const spots = fc
  .tuple(place, fc.tuple(evenly(-200, 200), evenly(-60, 60)), evenly(1, 30), fc.boolean())
  .map(([from, [along, up], radius, isDot]): Spot => {
    const to = isDot ? from : ([from[0] + along, from[1] + up] as const);
    return { name: 'SR1.1', joint: 'JR1', from, to, radius };
  });
const clearances = evenly(0, 12);

describe(`what glue blocks on a row (seed ${SEED})`, () => {
  test('is the rectangle around it with its clearance, whichever way a smear slants', () => {
    let [up, down] = [0, 0];
    fc.assert(
      fc.property(spots, clearances, (spot, clearance) => {
        const { blocked, beyond } = obstacleOf(spot, nearOn(rowTo(100, 0)), { clearance, may: ['trim'] });
        const bounds = boundsOf(spot, clearance);
        for (const end of ['from', 'to', 'low', 'high'] as const)
          expect(Math.abs(blocked[end] - bounds[end]), end).toBeLessThan(NEAR);
        expect(beyond).toBe(-Infinity);
        if (spot.from[1] > spot.to[1]) down++;
        if (spot.from[1] < spot.to[1]) up++;
      }),
      { seed: SEED, numRuns: 800 },
    );
    expect(Math.min(up, down)).toBeGreaterThan(50);
  });

  test('lies square across from it where the row is routed through to its joint, and counts from where that is near', () => {
    fc.assert(
      fc.property(spots, clearances, evenly(-0.05, 0.05), (spot, clearance, turn) => {
        const wide = 400;
        const { blocked, beyond } = obstacleOf(spot, farOn(rowTo(wide, turn)), { clearance, may: ['trim', 'split'] });
        // By plane geometry: along the centreline a line at that angle is shorter by its cosine.
        const ends = [spot.from[0], spot.to[0]].map((s) => s * Math.cos(turn));
        const off = spot.radius + clearance;
        expect(blocked.from).toBeCloseTo(Math.min(...ends) - off, 6);
        expect(blocked.to).toBeCloseTo(Math.max(...ends) + off, 6);
        const [first, last] = [Math.min(spot.from[0], spot.to[0]) - off, Math.max(spot.from[0], spot.to[0]) + off];
        const deep = Array.from({ length: 21 }, (_, i) => wide + (first + ((last - first) * i) / 20) * Math.sin(turn));
        expect(beyond).toBeCloseTo(Math.min(...deep) - Math.max(1, clearance), 6);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe('an obstacle of glue', () => {
  const spot: Spot = { name: 'DR1.3', joint: 'JC', from: [500, 40], to: [500, 40], radius: 8 };
  const at = nearOn(rowTo(100, 0));

  test('bears the name of its dot, and its row', () => {
    expect(obstacleOf(spot, at, { clearance: 2, may: ['trim'] })).toEqual({
      on: 'row',
      row: 'R1',
      why: 'dot',
      name: 'DR1.3',
      blocked: { from: 490, to: 510, low: 30, high: 50 },
      beyond: -Infinity,
    });
  });

  test('blocks from deck to bottom where a chamber may not be trimmed, which passing under it is', () => {
    const { blocked } = obstacleOf(spot, at, { clearance: 2, may: ['split', 'swallow'] });
    expect(blocked).toEqual({ from: 490, to: 510, low: -Infinity, high: Infinity });
  });

  test('is drawn out to the end of a chamber that may not be split, and never drawn in', () => {
    const rules = { clearance: 2, may: ['trim'] as const };
    expect(obstacleOf(spot, at, rules, [420, 505]).blocked).toMatchObject({ from: 420, to: 510 });
    expect(obstacleOf(spot, at, rules, [495, 580]).blocked).toMatchObject({ from: 490, to: 580 });
  });
});

test('the middle line of glue is carried across the piece, and keeps its heights', () => {
  const spot: Spot = { name: 'SR1.1', joint: 'JR1', from: [100, 20], to: [300, 50], radius: 4 };
  expect(lineOnRow(spot, nearOn(rowTo(100, 0.1)))).toEqual({ from: [100, 20], to: [300, 50] });
  const { from, to } = lineOnRow(spot, farOn(rowTo(100, 0.1)));
  expect([from[0] / 100, to[0] / 300].map((each) => Number(each.toFixed(9)))).toEqual(
    [Math.cos(0.1), Math.cos(0.1)].map((each) => Number(each.toFixed(9))),
  );
  expect([from[1], to[1]]).toEqual([20, 50]);
});
