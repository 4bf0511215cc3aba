import { describe, expect, test } from 'vitest';
import type { Board } from '../../src/board/board.js';
import { brokenMargin, isBetween, marginOf } from '../../src/dot/margin.js';
import { patchTreesOf } from '../../src/wall/patchTree.js';
import { CENTRE, meshOfBox } from '../chamber/box.js';

/** The disc is proved as a polygon of 16 sides around it: larger by a fiftieth of its radius at its corners. */
const OVER = 1 / Math.cos(Math.PI / 16) - 1;

// By hand: in a box the margin is what lies between the dot's edge and the nearest side.
describe.each([
  ['tiny', 0.1],
  ['typical', 1],
  ['huge', 20],
])('the margin of a %s dot', (_, by) => {
  const mesh = { ...meshOfBox({ length: 1000 * by, half: 200 * by, height: 100 * by }), chordError: 0.05 };
  const trees = patchTreesOf(mesh);
  const board = { mesh } as Board;
  const radius = 12 * by;
  const margin = (s: number, z: number) => marginOf(CENTRE, [s * by, z * by], radius, board, trees);
  const expectNear = (has: number, exact: number) => {
    expect(has).toBeLessThanOrEqual(exact * by - 0.05 + 1e-9);
    expect(has).toBeGreaterThanOrEqual(exact * by - 0.05 - OVER * radius - 1e-9);
  };

  test('is what lies between its edge and deck, bottom or nose, less what the mesh may hide', () => {
    expectNear(margin(500, 50), 50 - 12);
    expectNear(margin(500, 80), 20 - 12);
    expectNear(margin(500, 15), 15 - 12);
    expectNear(margin(30, 50), 30 - 12);
    expectNear(margin(982, 50), 18 - 12);
  });

  test('is nothing, or less, where its edge comes through', () => {
    expect(margin(500, 95)).toBeLessThanOrEqual(0);
    expect(margin(-1, 50)).toBeLessThanOrEqual(0);
  });

  test('is the same, whatever is known of others on the face', () => {
    const at = [500 * by, 80 * by] as const;
    const alone = marginOf(CENTRE, at, radius, board, trees);
    const known = [
      { at: [480 * by, 80 * by] as const, margin: marginOf(CENTRE, [480 * by, 80 * by], radius, board, trees) },
      { at: [500 * by, 60 * by] as const, margin: marginOf(CENTRE, [500 * by, 60 * by], radius, board, trees) },
    ];
    expect(marginOf(CENTRE, at, radius, board, trees, known)).toBe(alone);
  });
});

test('a dot is told where it is too near to the surface, or comes through it, and not where it is just far enough', () => {
  const dot = (margin: number) =>
    ({ name: 'DR1.2', joint: 'JR1', from: [700, 40], to: [700, 40], radius: 8, margin }) as const;
  const said = { kind: 'glue', where: 'DR1.2', by: [], at: 700 };
  expect(brokenMargin(dot(10), 10)).toBeUndefined();
  expect(brokenMargin(dot(9.9), 10)).toEqual({ ...said, has: 9.9, why: 'margin', needs: 10 });
  expect(brokenMargin(dot(0.1), 10)).toEqual({ ...said, has: 0.1, why: 'margin', needs: 10 });
  expect(brokenMargin(dot(0), 10)).toEqual({ ...said, has: 0, why: 'off-face' });
  expect(brokenMargin(dot(-3), 10)).toEqual({ ...said, has: -3, why: 'off-face' });
});

test('a place lies on a face between its two lines, and not on them', () => {
  const lines = { step: 8, count: 9, top: (s: number) => 50 + s, bottom: (s: number) => s };
  const on = (s: number, z: number) => isBetween(lines, [s, z]);
  expect([on(10, 10.1), on(10, 59.9), on(10, 10), on(10, 60), on(10, 5), on(10, 65)]).toEqual([
    true,
    true,
    false,
    false,
    false,
    false,
  ]);
});
