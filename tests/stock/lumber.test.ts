import { FillRule, inflatePathsD, intersectD, JoinType, EndType, areaPathsD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hullOf } from '../../src/contour/hull.js';
import { leastWidth } from '../../src/contour/leastWidth.js';
import type { Point } from '../../src/contour/point.js';
import { boardOf } from '../../src/board/board.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { boardFeet, DRESSED_THICKNESS, DRESSED_WIDTH } from '../../src/job/dressed.js';
import { parseLength } from '../../src/length/length.js';
import { leavesOf, lumberList } from '../../src/stock/lumber/lumberList.js';
import { laidPart, nested } from '../../src/stock/lumber/nest.js';
import { profilesOf } from '../../src/stock/lumber/profile.js';
import { scarfed } from '../../src/stock/lumber/scarf.js';
import { sampleJob, SAMPLES } from '../samples.js';

const MILLING = { above: 3, below: 3, ends: 20, kerf: 3, planing: 1.5, scarf: 12 };
const paulownia = { name: 'paulownia', density: 280, source: 'invented' };
const rectangle = (length: number, width: number): Point[] => [
  [0, 0],
  [length, 0],
  [length, width],
  [0, width],
];
/** A strip of even height along an arc, its chord `length` at the lower edge, risen by `sagitta` there. */
function banana(length: number, sagitta: number, height: number): Point[] {
  const radius = (length * length) / (8 * sagitta) + sagitta / 2;
  const sweep = Math.asin(length / 2 / radius);
  const arc = (r: number): Point[] =>
    Array.from({ length: 401 }, (_, i) => {
      const turn = sweep * (i / 200 - 1);
      return [r * Math.sin(turn) + length / 2, radius - r * Math.cos(turn)];
    });
  return [...arc(radius), ...arc(radius - height).reverse()];
}

describe('the narrowest straight board', () => {
  // Closed forms: a rectangle's shorter side; an equilateral triangle's height; a regular hexagon across its flats.
  it('of simple figures is known', () => {
    expect(leastWidth(rectangle(7, 3)).width).toBeCloseTo(3, 12);
    const regular = (n: number): Point[] =>
      Array.from({ length: n }, (_, i) => [Math.cos((2 * Math.PI * i) / n), Math.sin((2 * Math.PI * i) / n)]);
    expect(leastWidth(regular(3)).width).toBeCloseTo(1.5, 12);
    expect(leastWidth(regular(6)).width).toBeCloseTo(Math.sqrt(3), 12);
  });

  // Closed form: from the chord through the ends of the upper arc down to the lowest point of the lower one it is
  // r − (r − height) · cos(half the angle).
  it('of a strip of even height along an arc is its height and the rise of its upper edge', () => {
    for (const [length, sagitta, height] of [
      [3000, 90, 110],
      [3400, 140, 60],
      [2000, 10, 40],
    ] as const) {
      const radius = (length * length) / (8 * sagitta) + sagitta / 2;
      const upper = (radius - height) * (1 - Math.cos(Math.asin(length / 2 / radius)));
      expect(leastWidth(banana(length, sagitta, height)).width).toBeCloseTo(height + upper, 3);
    }
  });

  // Brute force: the extent across 7200 directions is never less, and the least of them hardly more.
  it('is no wider than in any direction tried, for points drawn at random', () => {
    const number = fc.integer({ min: -1000, max: 1000 });
    const points = fc.uniqueArray(fc.tuple(number, number), { minLength: 5, maxLength: 40, selector: (p) => p.join() });
    fc.assert(
      fc.property(points, (drawn) => {
        fc.pre(hullOf(drawn).length > 2);
        const { width, angle } = leastWidth(drawn);
        const extent = (turn: number) => {
          const out = drawn.map(([x, y]) => y * Math.cos(turn) - x * Math.sin(turn));
          return Math.max(...out) - Math.min(...out);
        };
        expect(extent(angle)).toBeCloseTo(width, 8);
        let least = Infinity;
        for (let i = 0; i < 7200; i++) least = Math.min(least, extent((Math.PI * i) / 7200));
        expect(least).toBeGreaterThanOrEqual(width - 1e-9);
        expect(least).toBeLessThan(width + 1);
      }),
      { seed: 1988, numRuns: 60 },
    );
  });
});

describe('profiles nested in a plank', () => {
  // Closed form: bananas of even height stacked in a row stand a height and a kerf apart, measured where they are
  // steepest: no more than height / cos of the end's slope.
  it('lie one in the hollow of the other', () => {
    const laid = [1, 2, 3].map((i) => laidPart({ name: `${i}`, outline: banana(3000, 90, 60), thickness: 10 }));
    const width = laid[0]!.width + 2 * (60 / Math.cos(Math.asin(1500 / (12500 + 45))) + 3) + 2;
    expect(nested(laid, 3100, width, 3)).toHaveLength(3);
    expect(nested(laid, 3100, laid[0]!.width + 2 * 63 - 2, 3).length).toBeLessThan(3);
  });

  // Reference: clipper2-ts widens each outline by half the kerf; no two of them may meet, and all lie in the plank.
  it.each(SAMPLES)('of %s keep a kerf apart and within the plank (clipper2-ts)', (name) => {
    const { board: spec, glueUp } = sampleJob(name);
    const board = boardOf(spec);
    const profiles = profilesOf(board, layupOf(glueUp, board.length), MILLING, () => true);
    const laid = profiles.map(({ member, outline }) => laidPart({ name: member.id, outline, thickness: 10 }));
    const [length, width] = [board.length + 200, 900];
    const placed = nested(laid, length, width, 3);
    expect(placed.length).toBeGreaterThan(2);
    const paths = placed.map(({ laid: { outline }, at }) =>
      inflatePathsD(
        [outline.map(([x, y]) => ({ x: x + at[0], y: y + at[1] }))],
        1.499,
        JoinType.Round,
        EndType.Polygon,
        2,
        3,
      ),
    );
    placed.forEach(({ laid: { outline }, at }, i) => {
      for (const [x, y] of outline) {
        expect(x + at[0]).toBeGreaterThanOrEqual(-1e-6);
        expect(x + at[0]).toBeLessThanOrEqual(length + 1e-6);
        expect(y + at[1]).toBeGreaterThanOrEqual(-1e-6);
        expect(y + at[1]).toBeLessThanOrEqual(width + 1e-6);
      }
      for (let j = 0; j < i; j++)
        expect(Math.abs(areaPathsD(intersectD(paths[i]!, paths[j]!, FillRule.NonZero)))).toBeLessThan(0.5);
    });
  });
});

describe('a profile to be milled', () => {
  it.each(SAMPLES)('of %s holds the finished member with what is to be left above and below', (name) => {
    const { board: spec, glueUp } = sampleJob(name);
    const board = boardOf(spec);
    const layup = layupOf(glueUp, board.length);
    const profiles = profilesOf(board, layup, MILLING, () => true);
    expect(profiles.map(({ member }) => member.id)).toEqual(layup.members.map(({ id }) => id));
    for (const { outline, bottom, deck } of profiles) {
      const half = outline.length / 2;
      const [low, high] = [outline.slice(0, half), outline.slice(half).reverse()];
      bottom.forEach(([s, z], i) => {
        expect(low[i + 1]![0]).toBe(s);
        expect(z - low[i + 1]![1]).toBeGreaterThanOrEqual(MILLING.below - 1e-9);
        expect(high[i + 1]![1] - deck[i]![1]).toBeGreaterThanOrEqual(MILLING.above - 1e-9);
      });
    }
  });
});

describe('a scarf', () => {
  // Wood Handbook (FPL-GTR-190, 2010), ch. 10: a slope of 1 in 12 or flatter. The parts cover the profile, overlap by
  // 12 times its thickness, and neighbours' joints lie apart.
  it('overlaps by twelve times the thickness and no part is longer than the plank', () => {
    const part = { name: 'MR2', outline: rectangle(3400, 100), thickness: 8 };
    const middles = ([0, 1] as const).map((turn) => {
      const parts = scarfed(part, 2000, 12, turn);
      expect(parts.map(({ name }) => name)).toEqual(['MR2 1/2', 'MR2 2/2']);
      const ends = parts.map(({ outline }) => [
        Math.min(...outline.map(([s]) => s)),
        Math.max(...outline.map(([s]) => s)),
      ]);
      expect([ends[0]![0], ends[1]![1]]).toEqual([0, 3400]);
      expect(ends[0]![1]! - ends[1]![0]!).toBeCloseTo(96, 9);
      for (const [from, to] of ends) expect(to! - from!).toBeLessThanOrEqual(2000);
      return ends[0]![1]!;
    });
    expect(middles[0]! - middles[1]!).toBeGreaterThan(200);
  });
});

describe('lumber', () => {
  // PS 20, sizes of boards and dimension, dry, in inches, as transcribed in "Softwood Lumber - Standard Sizes"
  // (engineeringtoolbox.com, d_1270): nominal and minimum dressed, line by line.
  it('has the dressed sizes of the standard', () => {
    const thickness = '1 3/4, 1.25 1, 1.5 1 1/4, 2 1 1/2, 2.5 2, 3 2 1/2, 3.5 3, 4 3 1/2, 4.5 4';
    const width =
      '2 1 1/2, 3 2 1/2, 4 3 1/2, 5 4 1/2, 6 5 1/2, 7 6 1/2, 8 7 1/4, 9 8 1/4, 10 9 1/4, 11 10 1/4, 12 11 1/4, 14 13 1/4, 16 15 1/4';
    for (const [sizes, published] of [
      [DRESSED_THICKNESS, thickness],
      [DRESSED_WIDTH, width],
    ] as const) {
      const lines = published.split(', ').map((line) => /^([\d.]+) (.*)$/.exec(line)!.slice(1) as [string, string]);
      expect(Object.keys(sizes).sort()).toEqual(lines.map(([nominal]) => nominal).sort());
      for (const [nominal, dressed] of lines) {
        const read = parseLength(`${dressed} in`, 'in');
        expect(read.ok && read.value / 25.4, nominal).toBeCloseTo(sizes[nominal]!, 9);
      }
    }
  });

  // Textbook figures: 1 × 12, 1 ft long is one board foot; 2 × 8, 12 ft is 16; thinner than an inch counts as an inch.
  it('is counted in board feet of its nominal size', () => {
    expect(boardFeet(1, 12, 1)).toBe(1);
    expect(boardFeet(2, 8, 12)).toBe(16);
    expect(boardFeet(0.5, 6, 10)).toBe(5);
    // 22 mm by 250 mm by 3100 mm: 1 × 9.8425 in × 10.1706 ft / 12.
    expect(boardFeet(22 / 25.4, 250 / 25.4, 3100 / 304.8)).toBe(8.34);
  });

  const profiles = (name: (typeof SAMPLES)[number]) => {
    const { board: spec, glueUp } = sampleJob(name);
    const board = boardOf(spec);
    return profilesOf(board, layupOf(glueUp, board.length), MILLING, ({ kind }) => kind === 'stringer').map((each) => ({
      ...each,
      member: { ...each.member, material: paulownia },
    }));
  };
  const plank = { material: paulownia, length: 4200, width: 285, thickness: 26 };

  it('is resawn where it is thick enough: leaf, planing and kerf by hand', () => {
    // 3 · (6 + 1.5) + 2 · 3 = 28.5.
    expect(leavesOf({ ...plank, thickness: 28.5 }, 6, MILLING)).toBe(3);
    expect(leavesOf({ ...plank, thickness: 28.4 }, 6, MILLING)).toBe(2);
    expect(leavesOf({ ...plank, thickness: 6 }, 6, MILLING)).toBe(1);
    expect(leavesOf({ ...plank, thickness: 5.9 }, 6, MILLING)).toBe(0);
  });

  it('gives every part once, from no more planks than there are, and wastes what is no part', () => {
    const list = lumberList(profiles('tarn-rescue'), [{ ...plank, price: 20, count: 9 }], MILLING);
    const names = list.planks.flatMap(({ leaves }) => leaves.flat().map(({ laid }) => laid.part.name));
    expect(list.lacks).toEqual([]);
    expect(names.sort()).toEqual(
      profiles('tarn-rescue')
        .map(({ member }) => member.id)
        .sort(),
    );
    expect(list.cost).toBe(20 * list.planks.length);
    expect(list.waste).toBeGreaterThan(0);
    expect(list.waste).toBeLessThan(1);
  });

  // By hand: six rectangles of 100 mm in planks of 309 mm (3 · 100 + 2 · 3 = 306) take two planks and no fewer.
  it('takes as few planks as rectangles need', () => {
    const [one] = profiles('mere-prone');
    const six = Array.from({ length: 6 }, () => ({ ...one!, outline: rectangle(3000, 100), thickness: 26 }));
    const list = lumberList(six, [{ ...plank, width: 309 }], MILLING);
    expect(list.planks).toHaveLength(2);
    // Used: six rectangles of 3000 × 100 of two planks of 4200 × 309.
    expect(list.waste).toBeCloseTo(1 - (6 * 3000 * 100) / (2 * 4200 * 309), 9);
  });

  it('says of what cannot be sawn what is missing and by how much', () => {
    const [one] = profiles('mere-prone');
    const lacks = (planks: (typeof plank)[], count?: number) =>
      lumberList(
        [{ ...one!, outline: rectangle(3000, 100), thickness: 19 }],
        planks.map((each) => ({ ...each, ...(count !== undefined && { count }) })),
        MILLING,
      ).lacks.map(({ why, needs, has }) => [why, needs, has]);
    expect(lacks([])).toEqual([['material', 1, 0]]);
    expect(lacks([{ ...plank, thickness: 18 }])).toEqual([['thickness', 19, 18]]);
    expect(lacks([{ ...plank, width: 90 }])).toEqual([['width', 100, 90]]);
    expect(lacks([plank], 0)).toEqual([['count', 1, 0]]);
  });

  it('too short is scarfed, and every piece of it is given', () => {
    const list = lumberList(profiles('mere-prone'), [{ ...plank, length: 2400 }], MILLING);
    expect(list.lacks).toEqual([]);
    const names = list.planks.flatMap(({ leaves }) => leaves.flat().map(({ laid }) => laid.part.name));
    expect(names.sort()).toEqual(['MC 1/2', 'MC 2/2', 'ML3 1/2', 'ML3 2/2', 'MR3 1/2', 'MR3 2/2']);
  });
});
