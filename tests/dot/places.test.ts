import { expect, test } from 'vitest';
import type { JointFace, Lines } from '../../src/dot/jointFace.js';
import { placesAlong } from '../../src/dot/places.js';
import type { StandingPart } from '../../src/dot/standing.js';
import { farOn, nearOn, rowTo } from './rows.js';

/** A face 100 mm high from 16 to 64 mm, which closes by 32 mm behind that. */
const lines: Lines = {
  step: 16,
  count: 7,
  top: (s) => (s < 16 ? NaN : s <= 64 ? 100 : 100 - (s - 64) * 3),
  bottom: (s) => (s < 16 ? NaN : 20),
};
const parts = [[10, 20], [40, 50], [70, 90]].map(([from, to]) => ({ from, to }) as StandingPart); // prettier-ignore
const at = (face: Partial<JointFace>, standing = new Map([['R1', parts]]), off = 3) =>
  placesAlong(face as JointFace, lines, off, standing);

test('a dot may lie on even steps, just clear of every chamber, and in the middle of every web, where the face is high enough', () => {
  const places = at({ rows: [nearOn(rowTo(60, 0))] });
  // By hand: steps 16 to 80; 7 lies where there is no face, 93 and 96 where it has closed.
  const steps = [16, 32, 48, 64, 80];
  const clear = [23, 37, 53, 67];
  const webs = [30, 60];
  expect(places.map(({ s }) => s)).toEqual([...steps, ...clear, ...webs].sort((a, b) => a - b));
  for (const { s, z } of places) expect(z).toBe(s <= 64 ? 60 : (100 - (s - 64) * 3 + 20) / 2);
});

test('a face that has just closed holds the middle of a dot still', () => {
  const touching = { ...lines, top: () => 20, bottom: () => 20 };
  expect(placesAlong({ rows: [] } as unknown as JointFace, touching, 3, new Map())).toHaveLength(lines.count);
  const closed = { ...lines, top: () => 19.9, bottom: () => 20 };
  expect(placesAlong({ rows: [] } as unknown as JointFace, closed, 3, new Map())).toEqual([]);
});

test('a far face has the marks of its chambers where it is parallel, and even steps alone where it is not', () => {
  expect(at({ rows: [farOn(rowTo(60, 0))] })).toEqual(at({ rows: [nearOn(rowTo(60, 0))] }));
  expect(at({ rows: [farOn(rowTo(60, 0.05))] }).map(({ s }) => s)).toEqual([16, 32, 48, 64, 80]);
  expect(at({ rows: [nearOn(rowTo(60, 0.05))] })).toEqual(at({ rows: [nearOn(rowTo(60, 0))] }));
});

test('no place lies before the nose', () => {
  const open = { ...lines, top: () => 100, bottom: () => 20 };
  const standing = new Map([['R1', [{ from: 2, to: 12 } as StandingPart]]]);
  const found = placesAlong({ rows: [nearOn(rowTo(60, 0))] } as unknown as JointFace, open, 3, standing);
  expect(found.map(({ s }) => s)).toEqual([0, 15, 16, 32, 48, 64, 80, 96]);
});
