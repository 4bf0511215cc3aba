import { expect, it } from 'vitest';
import { chain, dashed, doubleChain, frame, lineOf, NARROW, WIDE } from '../../../src/print/trace/line.js';

/** ISO 128-2:2022, 5.1. */
const SERIES = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2];

it('every line is of a width of ISO 128-2, narrow and wide as 1 to 2 (ISO 128-24)', () => {
  expect(WIDE / NARROW).toBe(2);
  for (const { width } of [...Object.values(lineOf), frame]) expect(SERIES).toContain(width);
});

it('dashes are 12 d, long dashes 24 d, gaps 3 d (ISO 128-2, 5.3)', () => {
  expect(dashed(0.5).dashes).toEqual([6, 1.5]);
  expect(chain(0.25).dashes.slice(0, 2)).toEqual([6, 0.75]);
  expect(doubleChain(0.25).dashes).toHaveLength(6);
});

it('the line to rout to and the finished edge differ in width, 2 to 1, and in kind', () => {
  expect(lineOf.chamber.width / lineOf.edge.width).toBe(2);
  expect(lineOf.chamber.dashes).toEqual([]);
  // ISO 128-2:2022, 5.2: no. 09, long-dashed short-dashed; 5.3: 24 d, 6 d, gaps of 3 d.
  expect(lineOf.edge.dashes.map((length) => length / lineOf.edge.width)).toEqual(
    [24, 3, 6, 3].map((d) => expect.closeTo(d, 9)),
  );
});

it('no two kinds of line that lie on one face are drawn alike', () => {
  const kinds = (['outline', 'edge', 'chamber', 'joint', 'keepout', 'mark', 'dimension'] as const).map((layer) =>
    JSON.stringify(lineOf[layer]),
  );
  expect(new Set(kinds).size).toBe(kinds.length);
});
