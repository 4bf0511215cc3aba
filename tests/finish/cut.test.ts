import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Girth } from '../../src/finish/cloth.js';
import { cutOf } from '../../src/finish/cut.js';
import { evenly } from '../evenly.js';

const LAP = 50;
/** A flat side whose edge is known in closed form; its places lie close together toward both ends. */
const sideOf = (length: number, edge: (along: number) => number): Girth[] =>
  Array.from({ length: 401 }, (_, i): Girth => {
    const along = (length / 2) * (1 - Math.cos((i / 400) * Math.PI));
    return { x: along, along, left: 0, right: edge(along) };
  });

test('a cloth with laps around a disc is a larger disc', () => {
  const r = 600;
  const cut = cutOf(
    sideOf(2 * r, (s) => Math.sqrt(Math.max(0, r ** 2 - (s - r) ** 2))),
    'right',
    LAP,
  );
  fc.assert(
    fc.property(evenly(-LAP + 5, 2 * r + LAP - 5), (s) => {
      expect(Math.abs(cut(s) - Math.sqrt((r + LAP) ** 2 - (s - r) ** 2))).toBeLessThan(0.5);
    }),
    { seed: 24, numRuns: 100 },
  );
});

test('where the edge runs at a slant the lap is as wide square to it, not across the board', () => {
  for (const slope of [0.2, 1, 2.5]) {
    const cut = cutOf(
      sideOf(1000, (s) => s * slope),
      'right',
      LAP,
    );
    expect(cut(500) - 500 * slope).toBeCloseTo(LAP * Math.hypot(1, slope), 1);
  }
});

test('beyond a square end the lap turns about its corner', () => {
  const cut = cutOf(
    sideOf(1000, () => 300),
    'right',
    LAP,
  );
  expect(cut(400)).toBeCloseTo(350, 2);
  expect(cut(1000)).toBeCloseTo(350, 6);
  expect(cut(1030)).toBeCloseTo(300 + 40, 6);
  expect(cut(1050)).toBeCloseTo(300, 6);
  expect(cut(1050.1)).toBe(0);
});
