import { expect, test } from 'vitest';
import type { DrawnChamber } from '../../src/chamber/row.js';
import { standingAfter, standingOf, priceOf } from '../../src/dot/standing.js';
import { closedBy, Stations, timesOf, type AcrossRules } from '../../src/dot/stations.js';
import { nearOn, rowTo } from './rows.js';

// By hand. Three rows of chambers 60 mm long; R1 and R3 have their webs in the middle of R2's chambers.
const rows = ['R1', 'R2', 'R3'].map((id) => ({ ...rowTo(60, 0), id }));
const chamber = (row: string, from: number, to: number): DrawnChamber => ({
  row,
  place: 1,
  profile: [[from, 0], [to, 0], [to, 50], [from, 50]], // prettier-ignore
  depth: [0, 60],
  volume: 0,
});
const drawn = standingOf([
  chamber('R1', 100, 160),
  chamber('R1', 180, 240),
  chamber('R2', 140, 200),
  chamber('R2', 220, 280),
  chamber('R3', 100, 160),
  chamber('R3', 180, 240),
]);
const rules = (more: Partial<AcrossRules> = {}): AcrossRules => ({
  rows,
  isHalf: false,
  length: 400,
  share: 0.75,
  ribs: [],
  ...more,
});
const price = (row: number, s: number) =>
  priceOf(nearOn(rows[row]!), { s, z: 25, radius: 4 }, drawn.get(rows[row]!.id)!, {
    may: ['split'],
    clearance: 1,
    web: 10,
    smallest: { length: 20, height: 20, depth: 20 },
  })!;
/** One joint between R1 and R2. */
const joints = [[rows[0]!, rows[1]!]];

test('what a dot leaves solid beyond the share that is asked counts, millimetre by millimetre and row by row', () => {
  const stations = new Stations(drawn, joints, rules());
  stations.count(drawn);
  expect(stations.excess()).toBe(0);
  // R2 parted from 165 to 175, where R1 and R3 have webs: three of three rows, one more than the two that 75 % are. One
  // dot on the joint takes as much there: it is allowed.
  const at170 = closedBy(price(1, 170), rows[1]!, rules());
  expect(at170).toEqual([{ from: 165, to: 175, rows: 1 }]);
  expect(stations.more(at170, [])).toBe(0);
  // With a joint that takes less there, it is not.
  const strict = new Stations(drawn, [[rows[0]!]], rules({ share: 0.75 }));
  strict.count(drawn);
  expect(strict.more(at170, [])).toBe(10);
  const after = new Map(drawn).set('R2', standingAfter(drawn.get('R2')!, price(1, 170)));
  strict.count(after);
  expect(strict.excess()).toBe(10);
});

test('at a rib all rows may be solid', () => {
  const stations = new Stations(drawn, [[rows[0]!]], rules({ ribs: [[160, 170]] }));
  stations.count(drawn);
  expect(stations.more(closedBy(price(1, 170), rows[1]!, rules()), [])).toBe(5);
});

test('rows closed over the same stretch count together, and those beside each other by themselves', () => {
  const stations = new Stations(drawn, [[rows[0]!]], rules({ share: 0 }));
  stations.count(drawn);
  // R2 runs from 140 to 280: 210 lies in its web, and R1 and R3 are open there.
  const [one, other] = [[{ from: 206, to: 216, rows: 1 }], [{ from: 211, to: 221, rows: 1 }]];
  // One row of R1's joint is allowed to close beside what is solid: 5 mm of two are one too many.
  expect(stations.more(one, other)).toBe(5);
  expect(stations.more(one, [])).toBe(0);
});

test('a row beside the centreline stands for two where the left is the mirror image, one on it for itself', () => {
  const half = rules({ isHalf: true });
  expect(timesOf(half, rows[0]!)).toBe(2);
  expect(timesOf(half, { ...rows[0]!, side: 'C' })).toBe(1);
  expect(timesOf(rules(), rows[0]!)).toBe(1);
  expect(closedBy(price(1, 170), rows[1]!, half)).toEqual([{ from: 165, to: 175, rows: 2 }]);
});
