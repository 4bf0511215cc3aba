import { describe, expect, test } from 'vitest';
import { levelled, longestRun, settingSlack } from '../../src/rout/inscribed.js';
import { seeded } from '../../src/block/nest/seeded.js';

type Pair = readonly [number, number];

/** Every stretch from one upright line to another, one after the other. */
function byEveryStretch(u: readonly number[], top: readonly number[], bottom: readonly number[], height: number) {
  let longest = 0;
  for (let i = 0; i < u.length; i++)
    for (let j = i + 1; j < u.length; j++) {
      const [high, low] = [Math.min(...top.slice(i, j + 1)), Math.max(...bottom.slice(i, j + 1))];
      // A line that crosses more than twice is not a number: nothing fits over it.
      if (high - low >= height) longest = Math.max(longest, u[j]! - u[i]!);
    }
  return longest;
}

test('the longest run of a height is that of every stretch, and lies within what it runs between', () => {
  const draw = seeded(20261127);
  let [none, some, broken] = [0, 0, 0];
  for (let n = 0; n < 600; n++) {
    const count = 1 + Math.floor(draw() * 14);
    const u = Array.from({ length: count }, () => 100 * draw()).sort((a, b) => a - b);
    const bottom = u.map(() => Math.floor(8 * draw()));
    const top = u.map((_, i) => (draw() < 0.08 ? NaN : bottom[i]! + Math.floor(14 * draw())));
    bottom.forEach((_, i) => Number.isNaN(top[i]) && (bottom[i] = NaN));
    const height = Math.floor(9 * draw());
    const exact = byEveryStretch(u, top, bottom, height);
    const run = longestRun({ centre: [0, 0], tilt: 0, u, top, bottom }, height);
    if (!run) {
      expect(exact).toBe(0);
      none++;
      continue;
    }
    some++;
    if (top.some(Number.isNaN)) broken++;
    expect(run.to - run.from).toBe(exact);
    const inside = u.flatMap((each, i) => (each >= run.from && each <= run.to ? [i] : []));
    expect(run.high).toBe(Math.min(...inside.map((i) => top[i]!)));
    expect(run.low).toBe(Math.max(...inside.map((i) => bottom[i]!)));
    expect(run.high - run.low).toBeGreaterThanOrEqual(height);
  }
  expect(Math.min(none, some, broken)).toBeGreaterThan(30);
});

describe('a chamber as a guide sees it', () => {
  const contour = (corners: readonly Pair[]) => corners.map(([x, y]) => ({ x, y }));

  // A parallelogram of 200 by 40 that rises 1 in 10: its middle line lies 5.71° up, to a tenth of a degree 5.7°.
  test('is turned level by whole tenths of a degree, about its centre of area, and cut at its corners and between', () => {
    const leaning: Pair[] = [[100, 10], [300, 30], [300, 70], [100, 50]]; // prettier-ignore
    const { centre, tilt, u, top, bottom } = levelled(contour(leaning));
    expect(centre[0]).toBeCloseTo(200, 9);
    expect(centre[1]).toBeCloseTo(40, 9);
    expect((tilt * 180) / Math.PI).toBeCloseTo(5.7, 9);
    const at = (x: number, y: number) => {
      const [dx, dy] = [x - 200, y - 40];
      return [dx * Math.cos(tilt) + dy * Math.sin(tilt), dy * Math.cos(tilt) - dx * Math.sin(tilt)] as const;
    };
    const corners = [at(100, 10), at(300, 30), at(300, 70), at(100, 50)];
    for (const [x] of corners) expect(Math.min(...u.map((each) => Math.abs(each - x)))).toBeLessThan(1e-9);
    expect(Math.max(...u.slice(1).map((each, i) => each - u[i]!))).toBeLessThanOrEqual(1 + 1e-9);
    expect(u[0]).toBeCloseTo(corners[0]![0], 9);
    expect(u.at(-1)).toBeCloseTo(corners[2]![0], 9);
    u.forEach((x, i) => {
      if (x < corners[3]![0] || x > corners[1]![0]) return;
      const line = ([ax, ay]: Pair, [bx, by]: Pair) => ay + ((x - ax) / (bx - ax)) * (by - ay);
      expect(bottom[i]).toBeCloseTo(line(corners[0]!, corners[1]!), 6);
      expect(top[i]).toBeCloseTo(line(corners[3]!, corners[2]!), 6);
    });
  });

  test('is not a number where an upright line crosses it more than twice', () => {
    // A box of 300 by 80 whose right end is notched, 60 deep.
    const box = [[0, 0], [300, 0], [240, 40], [300, 80], [0, 80]] as const; // prettier-ignore
    const { u, top, centre } = levelled(contour(box));
    const over = u.flatMap((each, i) => (Number.isNaN(top[i]) ? [each + centre[0]] : []));
    expect(Math.min(...over)).toBeGreaterThanOrEqual(240);
    expect(Math.min(...over)).toBeLessThan(242);
    expect(Math.max(...over)).toBeGreaterThan(298);
    const dented = [[0, 0], [300, 0], [300, 80], [200, 30], [0, 80]] as const; // prettier-ignore
    expect(levelled(contour(dented)).top.some(Number.isNaN)).toBe(false);
  });

  // A place off by half a step along and up, turned: cos and sin of the tilt (any geometry text).
  test('is missed by half a step of the rule, along and across its tilt', () => {
    const slack = (tilt: number, step: number) => settingSlack({ tilt } as never, step);
    expect(slack(0, 1)).toEqual({ u: 0.5, v: 0.5 });
    for (const tilt of [0.1, -0.1]) {
      const { u, v } = slack(tilt, 0.2);
      expect(v).toBeCloseTo(0.1 * Math.cos(0.1), 12);
      expect(u).toBeCloseTo(0.1 / Math.cos(0.1) + 0.1 * Math.sin(0.1), 12);
    }
  });
});
