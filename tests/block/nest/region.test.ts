import { describe, expect, test } from 'vitest';
import { bestPlace, moreThanSplit, putAt, worth, type CutPlace } from '../../../src/block/nest/place.js';
import {
  copyRegion,
  eachBlank,
  eachOpen,
  OPEN,
  takeOut,
  tighten,
  wholeSheet,
  type Region,
} from '../../../src/block/nest/region.js';
import { ruin } from '../../../src/block/nest/ruin.js';

const rules = { stages: 3, shortest: 20 };
const blank = (length: number, height: number, mayTurn = false) => ({ length, height, mayTurn });
/** Draws that repeat, by the multiplier of Lehmer's generator. */
function draws(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

/** Where every piece lies on its sheet, as someone at the saw lays them down: x, y, and how far it reaches. */
function laid(region: Region, x = 0, y = 0): { region: Region; x: number; y: number; w: number; h: number }[] {
  const [w, h] = region.axis === 0 ? [region.extent, region.across] : [region.across, region.extent];
  let at = 0;
  const inside = region.children.flatMap((child) => {
    const spot = region.axis === 0 ? laid(child, x + at, y) : laid(child, x, y + at);
    at += child.across;
    return spot;
  });
  expect(at + region.free).toBeCloseTo(region.kind === OPEN ? region.extent : 0, 9);
  return [{ region, x, y, w, h }, ...inside];
}
const blanksOf = (root: Region) => laid(root).filter(({ region }) => region.kind !== OPEN);

/** Fills a sheet with blanks at places drawn at random among the best of several. */
function filled(seed: number, axis: 0 | 1): { root: Region; sizes: ReturnType<typeof blank>[] } {
  const draw = draws(seed);
  const root = wholeSheet(1200, 600, axis);
  const sizes: ReturnType<typeof blank>[] = [];
  for (let i = 0; i < 25; i++) {
    const size = blank(30 + Math.floor(draw() * 200), 25 + Math.floor(draw() * 90), draw() < 0.5);
    const place = bestPlace([root], size, rules, draw, draw() < 0.5 ? 0.3 : 0);
    if (place) putAt(place, sizes.push(size) - 1, size);
  }
  return { root, sizes };
}

describe('what is cut out of a sheet', () => {
  test.each([0, 1] as const)(
    'lies within it, apart from all else, with its size and its grain (first cuts %d)',
    (axis) => {
      for (let seed = 1; seed <= 20; seed++) {
        const { root, sizes } = filled(seed, axis);
        const all = blanksOf(root);
        expect(all.length).toBe(sizes.length);
        expect(all.length).toBeGreaterThan(5);
        all.forEach(({ region, x, y, w, h }, i) => {
          const { length, height, mayTurn } = sizes[region.kind]!;
          expect([w, h]).toEqual(region.turned ? [height, length] : [length, height]);
          if (!mayTurn) expect(region.turned).toBe(false);
          expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
          expect(x + w).toBeLessThanOrEqual(1200 + 1e-6);
          expect(y + h).toBeLessThanOrEqual(600 + 1e-6);
          expect(region.level).toBeLessThanOrEqual(rules.stages);
          for (const other of all.slice(i + 1)) {
            const apart = Math.max(other.x - x - w, x - other.x - other.w, other.y - y - h, y - other.y - other.h);
            expect(apart).toBeGreaterThan(-1e-6);
          }
        });
      }
    },
  );

  // By hand: the first blank of a sheet 1200 × 600 that is ripped first begins a strip as wide as itself, and stands at
  // its beginning.
  test('is by hand what a first blank leaves', () => {
    const root = wholeSheet(1200, 600, 1);
    const size = blank(300, 100);
    putAt(
      bestPlace([root], size, rules, () => 1, 0)!,
      0,
      size,
    );
    expect([root.free, root.across, root.extent]).toEqual([500, 1200, 600]);
    const [strip] = root.children;
    expect([strip!.axis, strip!.level, strip!.across, strip!.free]).toEqual([0, 1, 100, 900]);
    const [cut] = strip!.children;
    expect([cut!.kind, cut!.level, cut!.across, cut!.extent]).toEqual([0, 2, 300, 100]);
  });
});

// Area to the power 1¼ counts, a quarter of it where only what fits exactly can be cut; what no blank fits, nothing.
test('a rest is worth its area and something for its size, nothing where no blank fits or no cut is left', () => {
  expect(worth(100, 50, 0, rules)).toBeCloseTo(5000 ** 1.25, 6);
  expect(worth(100, 50, 1, rules)).toBeCloseTo(5000 ** 1.25, 6);
  expect(worth(100, 50, 2, rules)).toBeCloseTo(5000 ** 1.25 / 4, 6);
  expect(worth(20, 20, 0, rules)).toBeCloseTo(400 ** 1.25, 6);
  for (const [along, across, level] of [[100, 50, 3], [19.9, 500, 0], [500, 19.9, 0]] as const)
    expect(worth(along, across, level, rules)).toBe(0); // prettier-ignore
  expect(moreThanSplit(16)).toBe(32);
});

describe('the best place', () => {
  /** Every way to cut a blank out of a piece, and what the rests lose by it. */
  function allPlaces(root: Region, size: ReturnType<typeof blank>): { place: CutPlace; loss: number }[] {
    const found: { place: CutPlace; loss: number }[] = [];
    eachOpen(root, (region) => {
      if (region.level >= rules.stages) return;
      for (const turned of size.mayTurn ? [false, true] : [false]) {
        const isAlong = (region.axis === 0) !== turned;
        const [take, across] = isAlong ? [size.length, size.height] : [size.height, size.length];
        const [slack, rest] = [region.across - across, region.free - take];
        if (slack < -1e-6 || rest < -1e-6) continue;
        const before = worth(region.free, region.across, region.level, rules);
        const add = (cut: CutPlace['cut'], ...after: number[]) =>
          found.push({ place: { region, turned, cut }, loss: before - after.reduce((sum, each) => sum + each, 0) });
        const beside = worth(rest, region.across, region.level, rules);
        if (slack < 0.01) add('fits', beside);
        else {
          if (region.level + 2 <= rules.stages) add('strip', beside, worth(slack, take, region.level + 1, rules));
          if (region.level + 3 <= rules.stages && rest > 0.01)
            add(
              'rest',
              worth(slack, region.free, region.level + 1, rules),
              worth(rest, across, region.level + 2, rules),
            );
        }
      }
    });
    return found;
  }

  test('spoils least of all, by every way there is', () => {
    const draw = draws(99);
    const kinds = new Set<string>();
    let none = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const { root } = filled(seed, (seed % 2) as 0 | 1);
      for (let i = 0; i < 10; i++) {
        const size = blank(25 + Math.floor(draw() * 300), 20 + Math.floor(draw() * 120), draw() < 0.5);
        const place = bestPlace([root], size, rules, () => 1, 0);
        const all = allPlaces(root, size);
        const least = Math.min(...all.map(({ loss }) => loss));
        if (!place) {
          expect(all).toEqual([]);
          none++;
          continue;
        }
        const same = all.find(
          (each) =>
            each.place.region === place.region && each.place.turned === place.turned && each.place.cut === place.cut,
        );
        expect(same!.loss).toBeCloseTo(least, 6);
        kinds.add(place.cut);
      }
    }
    expect(none).toBeGreaterThan(0);
    expect([...kinds].sort()).toEqual(['fits', 'rest', 'strip'].filter((kind) => kinds.has(kind)));
    expect(kinds.size).toBeGreaterThan(1);
  });

  test('fits to the last hundredth of a millimetre, and not beyond rounding', () => {
    const root = wholeSheet(300, 100, 0);
    expect(bestPlace([root], blank(300, 100), rules, () => 1, 0)?.cut).toBe('fits');
    expect(bestPlace([root], blank(300, 99.995), rules, () => 1, 0)?.cut).toBe('fits');
    expect(bestPlace([root], blank(300, 99.9), rules, () => 1, 0)?.cut).toBe('strip');
    expect(bestPlace([root], blank(300.01, 50), rules, () => 1, 0)).toBeUndefined();
    expect(bestPlace([root], blank(100, 100.01), rules, () => 1, 0)).toBeUndefined();
    expect(bestPlace([root], blank(100, 300), rules, () => 1, 0)).toBeUndefined();
    expect(bestPlace([root], blank(100, 300, true), rules, () => 1, 0)?.turned).toBe(true);
    expect(bestPlace([], blank(10, 10), rules, () => 1, 0)).toBeUndefined();
  });

  test('is overlooked as often as asked, and no draw is made where nothing is', () => {
    const root = wholeSheet(1200, 600, 1);
    const asked = (overlooked: number, drawn: number) =>
      bestPlace([root], blank(100, 50), rules, () => drawn, overlooked) !== undefined;
    expect([asked(0.3, 0.29), asked(0.3, 0.31), asked(1, 0.999)]).toEqual([false, true, false]);
    const none = () => {
      throw new Error('drawn for nothing');
    };
    expect(bestPlace([root], blank(100, 50), rules, none, 0)).toBeDefined();
  });
});

describe('a piece', () => {
  test('is copied with all that it holds, apart from it', () => {
    const { root } = filled(7, 1);
    const copy = copyRegion(root);
    expect(copy).toEqual(root);
    takeOut(copy, 0);
    expect(copy.children).toHaveLength(root.children.length - 1);
    expect(filled(7, 1).root).toEqual(root);
  });

  test('gets back what is taken out of it', () => {
    const root = wholeSheet(1200, 600, 1);
    for (const height of [100, 60, 200]) putAt({ region: root, turned: false, cut: 'strip' }, 0, blank(300, height));
    const child = root.children[1]!;
    expect(takeOut(root, 1)).toBe(child);
    expect(root.children.map(({ across }) => across)).toEqual([100, 200]);
    expect(root.free).toBe(300);
  });

  // By hand: a strip 100 wide whose only blank is gone is given back whole; one of 200 whose highest is gone shrinks to
  // the next.
  test('is narrowed to what it holds, and gone where it holds nothing', () => {
    const root = wholeSheet(1200, 600, 1);
    putAt({ region: root, turned: false, cut: 'strip' }, 0, blank(300, 100));
    putAt({ region: root, turned: false, cut: 'strip' }, 1, blank(400, 200));
    const wide = root.children[1]!;
    putAt({ region: wide, turned: false, cut: 'strip' }, 2, blank(250, 120));
    putAt({ region: wide, turned: false, cut: 'strip' }, 3, blank(150, 150));
    tighten(root);
    // A blank fills its strip: nothing shrinks.
    expect(root.children.map(({ across }) => across)).toEqual([100, 200]);
    takeOut(wide, 0);
    takeOut(root.children[0]!, 0);
    tighten(root);
    expect(root.children.map(({ across }) => across)).toEqual([150]);
    expect(root.free).toBe(450);
    expect(wide.children.map(({ extent, free }) => [extent, free])).toEqual([[150, 30], [150, 0]]); // prettier-ignore
    expect(laid(root).filter(({ region }) => region.kind !== OPEN)).toHaveLength(2);
  });

  test('tells of every piece in it and of every blank', () => {
    const { root, sizes } = filled(3, 0);
    const [open, kinds] = [new Set<Region>(), [] as number[]];
    eachOpen(root, (region) => open.add(region));
    eachBlank(root, ({ kind }) => kinds.push(kind));
    const pieces = laid(root).map(({ region }) => region);
    expect([...open]).toEqual(pieces.filter(({ kind }) => kind === OPEN));
    expect(kinds.sort((a, b) => a - b)).toEqual(sizes.map((_, i) => i));
  });
});

describe('taking pieces out', () => {
  test.each([1, 3, 10, 99])('takes at least %d blanks, or all, and loses none', (count) => {
    for (let seed = 1; seed <= 10; seed++) {
      const roots = [filled(seed, 0), filled(seed + 50, 1)].map(({ root }) => root);
      const kinds = (of: readonly Region[]) => of.flatMap((root) => blanksOf(root).map(({ region }) => region.kind));
      const before = kinds(roots);
      const out = ruin(roots, count, draws(seed));
      expect(out.length).toBeGreaterThanOrEqual(Math.min(count, before.length));
      expect([...out, ...kinds(roots)].sort((a, b) => a - b)).toEqual([...before].sort((a, b) => a - b));
      // No more than the last piece holds is taken beyond what was asked.
      if (count === 1) expect(out.length).toBeLessThan(before.length);
    }
  });

  test('looks into a piece four times of five, and takes what has nothing in it', () => {
    const made = () => {
      const root = wholeSheet(1200, 600, 1);
      putAt({ region: root, turned: false, cut: 'strip' }, 0, blank(300, 100));
      putAt({ region: root.children[0]!, turned: false, cut: 'fits' }, 1, blank(200, 100));
      return root;
    };
    const scripted = (values: number[]) => () => values.shift() ?? 0;
    // Which sheet, which strip, whether to look into it, which blank.
    expect(ruin([made()], 1, scripted([0, 0, 0.79, 0.6]))).toEqual([1]);
    expect(ruin([made()], 1, scripted([0, 0, 0.81]))).toEqual([0, 1]);
    expect(ruin([wholeSheet(10, 10, 0)], 1, scripted([]))).toEqual([]);
  });
});
