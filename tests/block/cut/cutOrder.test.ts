import { describe, expect, test } from 'vitest';
import { singleBlank } from '../../../src/block/cut/blank.js';
import { checkCutting, sheetFor } from '../../../src/block/cut/checkCutting.js';
import { orderCuts, worthKeeping } from '../../../src/block/cut/cutOrder.js';
import { cutSheets } from '../../../src/block/cut/cutSheets.js';
import { closestPair, pairTapered } from '../../../src/block/cut/taperPair.js';
import { fenceSettings } from '../../../src/block/cut/fenceSettings.js';
import type { CutPart, CutStock, SawSetting } from '../../../src/block/nest/cutPart.js';
import { putAt, type CutPlace } from '../../../src/block/nest/place.js';
import { wholeSheet, type Region } from '../../../src/block/nest/region.js';

const saw: SawSetting = { kerf: 4, trim: 10, keep: { length: 200, width: 60 } };
const stock: CutStock = { id: 'full', foam: 'fill', length: 1220, width: 620 };
const part = (id: string, length: number, height: number, more: Partial<CutPart> = {}): CutPart => ({
  id,
  foam: 'fill',
  length,
  height,
  mayTurn: true,
  ...more,
});
/** A sheet that is cut as is said, place by place, each in the piece that the way through the children leads to. */
function cutBy(
  parts: readonly CutPart[],
  places: readonly [way: number[], cut: CutPlace['cut'], turned?: boolean][],
  axis: 0 | 1 = 1,
) {
  const root = wholeSheet(1204, 604, axis);
  places.forEach(([way, cut, turned = false], kind) => {
    const region = way.reduce<Region>((piece, i) => piece.children[i]!, root);
    putAt({ region, turned, cut }, kind, {
      length: parts[kind]!.length + 4,
      height: parts[kind]!.height + 4,
      mayTurn: true,
    });
  });
  return orderCuts(7, stock, root, parts.map(singleBlank), saw);
}

describe('a sheet is worked, by hand', () => {
  test('squared by two rips and two cross-cuts, the second of each run on the edge of the first', () => {
    const { cuts } = cutBy([part('a', 300, 100)], [[[], 'strip']]);
    expect(cuts.slice(0, 4)).toEqual([
      { number: 1, stage: 0, piece: '7', makes: '7', run: 'along', from: { x: 0, y: 8 }, to: { x: 1220, y: 8 } },
      { number: 2, stage: 0, piece: '7', makes: '7', run: 'along', fence: 600, from: { x: 0, y: 612 }, to: { x: 1220, y: 612 } },
      { number: 3, stage: 0, piece: '7', makes: '7', run: 'across', from: { x: 8, y: 10 }, to: { x: 8, y: 610 } },
      { number: 4, stage: 0, piece: '7', makes: '7', run: 'across', fence: 1200, from: { x: 1212, y: 10 }, to: { x: 1212, y: 610 } },
    ]); // prettier-ignore
    const plain = orderCuts(1, stock, wholeSheet(1220, 620, 1), [], { ...saw, trim: 0 });
    expect(plain.cuts).toEqual([]);
  });

  test('then strip by strip, the widest first, and every piece has the name that its cut gives it', () => {
    const parts = [part('a', 300, 100), part('b', 400, 200), part('c', 250, 120), part('d', 150, 200)];
    const { cuts, blanks, offcuts } = cutBy(parts, [
      [[], 'strip'],
      [[], 'strip'],
      [[1], 'strip'],
      [[1], 'fits'],
    ]);
    expect(cuts.slice(4).map(({ stage, piece, makes, run, fence }) => [stage, piece, makes, run, fence])).toEqual([
      [1, '7', '7A', 'along', 200],
      [1, '7', '7B', 'along', 100],
      [2, '7A', 'b', 'across', 400],
      [2, '7A', '7A2', 'across', 250],
      [2, '7A', 'd', 'across', 150],
      [2, '7B', 'a', 'across', 300],
      [3, '7A2', 'c', 'along', 120],
    ]);
    const spots = new Map(blanks.map(({ parts: [only], x, y, length, width }) => [only!.id, [x, y, length, width]]));
    expect(Object.fromEntries(spots)).toEqual({
      b: [10, 10, 400, 200],
      c: [414, 10, 250, 120],
      d: [668, 10, 150, 200],
      a: [10, 214, 300, 100],
    });
    // Cuts run from edge to edge of their piece, the blade behind what it makes.
    const [first, , third] = cuts.slice(4);
    expect([first!.from, first!.to]).toEqual([{ x: 10, y: 212 }, { x: 1210, y: 212 }]); // prettier-ignore
    expect([third!.from, third!.to]).toEqual([{ x: 412, y: 10 }, { x: 412, y: 210 }]); // prettier-ignore
    expect(offcuts).toEqual([
      { id: '7 rest', x: 10, y: 318, length: 1200, width: 292 },
      { id: '7A rest', x: 822, y: 10, length: 388, width: 200 },
      { id: '7B rest', x: 314, y: 214, length: 896, width: 100 },
      { id: '7A2 rest', x: 414, y: 134, length: 250, width: 76 },
    ]);
    expect(cuts.map(({ number }) => number)).toEqual(cuts.map((_, i) => i + 1));
  });

  test('cut across first it is the same with length and width exchanged, a blank turned where it is', () => {
    const parts = [part('a', 300, 100), part('b', 90, 300)];
    const { cuts, blanks } = cutBy(parts, [[[], 'strip'], [[0], 'fits', true]], 0); // prettier-ignore
    expect(cuts.slice(4).map(({ stage, piece, makes, run, fence }) => [stage, piece, makes, run, fence])).toEqual([
      [1, '7', '7A', 'across', 300],
      [2, '7A', 'a', 'along', 100],
      [2, '7A', 'b', 'along', 90],
    ]);
    const [a, b] = blanks;
    expect([a!.x, a!.y, a!.length, a!.width]).toEqual([10, 10, 300, 100]);
    expect([b!.x, b!.y, b!.length, b!.width]).toEqual([10, 114, 300, 90]);
    // Turned by a quarter, counter-clockwise: what ran along runs up.
    expect(b!.parts[0]!.outline).toEqual([
      { x: 310, y: 114 },
      { x: 310, y: 204 },
      { x: 10, y: 204 },
      { x: 10, y: 114 },
    ]);
  });

  test('a piece of one strip as wide as itself is not cut for it, and keeps name and stage', () => {
    const parts = [part('a', 300, 600)];
    const { cuts } = cutBy(parts, [[[], 'strip']]);
    expect(cuts.slice(4).map(({ stage, piece, makes, run }) => [stage, piece, makes, run])).toEqual([
      [1, '7', 'a', 'across'],
    ]);
  });

  test('names go on from Z to AA, and from figures by points', () => {
    const rips = Array.from({ length: 28 }, (_, i) => part(`r${i}`, 300, 10));
    const { cuts } = cutBy(rips, rips.map(() => [[], 'strip'])); // prettier-ignore
    const made = cuts.filter(({ stage }) => stage === 1).map(({ makes }) => makes);
    expect([made[0], made[25], made[26], made[27]]).toEqual(['7A', '7Z', '7AA', '7AB']);
    const deep = wholeSheet(1204, 604, 1);
    let region = deep;
    for (const across of [400, 300, 200, 100]) {
      const axis = region.axis === 0 ? 1 : 0;
      const extent = region.across;
      const child: Region = {
        kind: -1,
        turned: false,
        axis,
        level: region.level + 1,
        extent,
        across,
        free: extent,
        children: [],
      };
      region.children.push(child);
      region.free -= across;
      region = child;
    }
    const names = orderCuts(3, stock, deep, [], saw).cuts.slice(4).map(({ makes }) => makes); // prettier-ignore
    expect(names).toEqual(['3A', '3A1', '3A1.1', '3A1.1.1']);
  });
});

test('a rest is worth keeping from the stated size on, whichever way it lies', () => {
  const kept = (a: number, b: number) => worthKeeping(a, b, saw);
  expect([kept(200, 60), kept(60, 200), kept(199.98, 60), kept(300, 59.98), kept(199.995, 59.995)]).toEqual([
    true,
    true,
    false,
    false,
    true,
  ]);
  const all = { ...saw, keep: { length: 0, width: 0 } };
  expect([worthKeeping(0, 50, all), worthKeeping(50, 0, all), worthKeeping(0.1, 0.1, all)]).toEqual([
    false,
    false,
    true,
  ]);
});

test('cuts of one fence setting are taken together: stage by stage, rips first, the widest first', () => {
  const cut = (number: number, stage: number, run: 'along' | 'across', fence?: number) =>
    ({ number, stage, run, ...(fence !== undefined && { fence }) }) as never;
  const sheets = [
    { number: 1, cuts: [cut(1, 0, 'along'), cut(2, 1, 'along', 80), cut(3, 1, 'along', 100), cut(4, 2, 'across', 50)] },
    { number: 2, cuts: [cut(1, 1, 'across', 300), cut(2, 1, 'along', 99.995), cut(3, 2, 'along', 50), cut(4, 1, 'along', 99.98)] },
  ] as never; // prettier-ignore
  expect(fenceSettings(sheets).map(({ stage, run, fence, cuts }) => [stage, run, fence, cuts.map((c) => `${c.sheet}.${c.number}`)])).toEqual([
    [1, 'along', 100, ['1.3', '2.2']],
    [1, 'along', 99.98, ['2.4']],
    [1, 'along', 80, ['1.2']],
    [1, 'across', 300, ['2.1']],
    [2, 'along', 50, ['2.3']],
    [2, 'across', 50, ['1.4']],
  ]); // prettier-ignore
});

describe('what no saw could cut is sorted out, and only that', () => {
  const why = (more: Partial<CutStock>, setting = saw) => {
    const { stock: good, faults } = checkCutting([], [{ ...stock, ...more }], setting);
    expect(good.length + faults.length).toBe(1);
    return faults[0] && 'reason' in faults[0] ? faults[0].reason : undefined;
  };
  test('sheets', () => {
    expect([
      why({}),
      why({ length: 20.01 }),
      why({ width: 20.01 }),
      why({ count: 0 }),
      why({ count: 3, price: 0 }),
    ]).toEqual(new Array(5).fill(undefined));
    expect([why({ length: 20 }), why({ width: 20 }), why({ width: 19 })]).toEqual(new Array(3).fill('trim'));
    expect([why({ length: 0 }), why({ width: -4 }), why({ width: NaN }), why({ length: Infinity })]).toEqual(
      new Array(4).fill('size'),
    );
    expect([why({ count: -1 }), why({ count: 1.5 }), why({ count: NaN })]).toEqual(new Array(3).fill('count'));
    expect([why({ price: -1 }), why({ price: Infinity })]).toEqual(new Array(2).fill('price'));
  });

  test('saws, each by what is wrong with it', () => {
    const wrong = (setting: Partial<SawSetting>) =>
      checkCutting([part('a', 100, 50)], [stock], { ...saw, ...setting }).faults.map(
        (fault) => 'what' in fault && fault.what,
      );
    expect(wrong({ kerf: 0, trim: 0, keep: { length: 0, width: 0 } })).toEqual([]);
    expect(wrong({ kerf: -1 })).toEqual(['kerf']);
    expect(wrong({ trim: NaN })).toEqual(['trim']);
    expect(wrong({ keep: { length: -1, width: 5 } })).toEqual(['keep']);
    expect(wrong({ keep: { length: 5, width: Infinity } })).toEqual(['keep']);
    expect(wrong({ kerf: -1, trim: -1, keep: { length: -1, width: -1 } })).toEqual(['kerf', 'trim', 'keep']);
  });

  test('blocks, to the last of what fits', () => {
    const fault = (one: CutPart, sheets: readonly CutStock[] = [stock]) => {
      const { parts, faults } = checkCutting([one, part('good', 100, 50)], sheets, saw);
      expect(parts.some(({ id }) => id === one.id)).toBe(faults.length === 0);
      return faults[0]?.kind;
    };
    expect([fault(part('a', 1200, 600)), fault(part('a', 600, 1200)), fault(part('a', 4.01, 50))]).toEqual(
      new Array(3).fill(undefined),
    );
    expect(fault(part('a', 1200.1, 600))).toBe('too-large');
    expect(fault(part('a', 1200, 600.1))).toBe('too-large');
    expect(fault(part('a', 600, 1200, { mayTurn: false }))).toBe('too-large');
    expect([fault(part('a', 4, 50)), fault(part('a', 50, 3))]).toEqual(['kerf-too-wide', 'kerf-too-wide']);
    expect([fault(part('a', 0, 50)), fault(part('a', 50, NaN))]).toEqual(['no-size', 'no-size']);
    // A taper of its whole height ends in a point; opening out it begins in one.
    expect(fault(part('a', 300, 50, { taper: { top: 30, bottom: 20 } }))).toBe('taper-runs-out');
    expect(fault(part('a', 300, 50, { taper: { top: -30, bottom: -20 } }))).toBe('taper-runs-out');
    expect(fault(part('a', 300, 50, { taper: { top: 30, bottom: 19.9 } }))).toBeUndefined();
    expect(fault(part('a', 300, 50, { foam: 'other' }))).toBe('no-stock');
    expect(() => checkCutting([part('a', 1, 1), part('a', 2, 2)], [], saw)).toThrow('a');
    expect(sheetFor(part('a', 300, 50), saw)).toEqual({ length: 320, width: 70 });
  });
});

describe('tapered blocks in pairs', () => {
  const wedge = (id: string, length: number, top: number, bottom = 0, height = 80) =>
    part(id, length, height, { taper: { top, bottom } });
  const idsOf = ({ pairs }: ReturnType<typeof pairTapered>) =>
    pairs.map(({ parts }) => parts.map((each) => each.part.id).join('+')).sort();

  test('are those next in length, however far apart they are listed', () => {
    const short = Array.from({ length: 50 }, (_, i) => wedge(`s${i}`, 300, 1));
    const made = pairTapered([wedge('x', 900, 30), ...short, wedge('y', 900, 30)], 3, () => true);
    expect(idsOf(made)).toContain('x+y');
  });

  test('are those that save most first, each block once, and none that saves nothing or fits no sheet', () => {
    const made = pairTapered(
      [wedge('a', 300, 30), wedge('b', 300, 30), wedge('c', 300, 10), part('d', 300, 80)],
      3,
      () => true,
    );
    expect(idsOf(made)).toEqual(['a+b']);
    expect(made.singles.map(({ id }) => id)).toEqual(['c', 'd']);
    // By hand: 2 · 303 · 83 of two singles is less than what a much longer partner wastes.
    expect(pairTapered([wedge('a', 300, 30), wedge('b', 600, 1)], 3, () => true).pairs).toEqual([]);
    expect(pairTapered([wedge('a', 300, 30), wedge('b', 300, 30)], 3, ({ height }) => height < 130).pairs).toEqual([]);
    // A taper that falls above and rises below evenly is none of the rectangle's.
    expect(idsOf(pairTapered([wedge('a', 300, 0), wedge('b', 300, 0)], 3, () => true))).toEqual([]);
    expect(idsOf(pairTapered([wedge('a', 300, 0, 30), wedge('b', 300, 0, 30)], 3, () => true))).toEqual(['a+b']);
  });

  // The saw's width measured along the height of a slanting cut is kerf / cos; brute force: corners against edges.
  test.each([
    [wedge('a', 300, 30), wedge('b', 300, 30)],
    [wedge('a', 300, 30), wedge('b', 280, 10)],
    [wedge('a', 300, -20, 5), wedge('b', 310, 25, 8)],
    [wedge('a', 300, 4, 20, 60), wedge('b', 290, 0, 35, 90)],
  ])('lie a saw cut apart, and as low as they can', (first, second) => {
    const { parts, length, height, split } = closestPair(first, second, 4);
    const [below, above] = parts.map(({ outline }) => outline);
    const distance = Math.min(
      ...below!.flatMap((p) => above!.map((q, i) => toSegment(p, q, above![(i + 1) % 4]!))),
      ...above!.flatMap((p) => below!.map((q, i) => toSegment(p, q, below![(i + 1) % 4]!))),
    );
    expect(distance).toBeGreaterThan(4 - 1e-9);
    expect(distance).toBeLessThan(4.6);
    const all = [...below!, ...above!];
    expect(length).toBe(Math.max(...all.map(({ x }) => x)));
    expect(height).toBeCloseTo(Math.max(...all.map(({ y }) => y)), 9);
    expect(Math.min(...all.map(({ y }) => y))).toBeCloseTo(0, 9);
    // The cut between them runs half the saw's width beside the lower one.
    const { from, to, angle } = split!;
    expect([from.x, to.x]).toEqual([0, length]);
    expect(Math.tan(angle)).toBeCloseTo((to.y - from.y) / length, 9);
    expect(Math.min(...below!.map((p) => toSegment(p, from, to)))).toBeCloseTo(2, 9);
  });

  // Smallest case of a fault: a long block sank past the end of a short one, out of the blank that both are cut from.
  test('lie both in their blank, also where the lower is shorter and falls steeply', () => {
    for (const [first, second] of [
      [wedge('a', 5, -2, -2, 5), wedge('b', 12.6, -5, -5, 12.5)],
      [wedge('a', 5, -2, -2, 5), wedge('b', 14, -5.2, -5.2, 13)],
      [wedge('a', 60, 40, 0, 80), wedge('b', 300, 20, 0, 80)],
      [wedge('a', 60, 0, 40, 80), wedge('b', 300, -10, 30, 80)],
    ] as const)
      for (const [lower, upper] of [
        [first, second],
        [second, first],
      ]) {
        const { parts, height } = closestPair(lower!, upper!, 0);
        const y = parts.flatMap(({ outline }) => outline.map((at) => at.y));
        expect(Math.min(...y)).toBeGreaterThan(-1e-9);
        expect(Math.max(...y)).toBeLessThan(height + 1e-9);
      }
  });

  test('lie with those edges together that make the lower pair', () => {
    const pair = (first: CutPart, second: CutPart) => closestPair(first, second, 0).height;
    // Both fall above: 80 + 50. Laid with their level edges together they would be 160 high.
    expect(pair(wedge('a', 300, 30), wedge('b', 300, 30))).toBeCloseTo(130, 9);
    expect(pair(wedge('a', 300, 0, 30), wedge('b', 300, 0, 30))).toBeCloseTo(130, 9);
    expect(closestPair(wedge('a', 300, 30), wedge('b', 300, 30), 0).mayTurn).toBe(true);
    const grained = { ...wedge('b', 300, 30), mayTurn: false };
    expect([
      closestPair(wedge('a', 300, 30), grained, 0).mayTurn,
      closestPair(grained, wedge('a', 300, 30), 0).mayTurn,
    ]).toEqual([false, false]);
  });

  function toSegment(p: { x: number; y: number }, a: { x: number; y: number }, b: { x: number; y: number }): number {
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
  }
});

describe('a plan of sheets', () => {
  // Usable of a sheet of 1220 × 620 are 1204 × 604 with a saw cut; a block takes its size and a saw cut each way.
  test('says the least area of sheets that any plan takes', () => {
    const parts = Array.from({ length: 9 }, (_, i) => part(`b${i}`, 396, 296));
    const least = (9 * 400 * 300) / (1204 * 604);
    expect(least).toBeGreaterThan(1);
    expect(cutSheets(parts, [stock], saw, { rounds: 50 }).sums.leastSheetArea).toBe(2 * 1220 * 620);
    const two = [{ ...stock, id: 'small', length: 620, width: 320 }, stock];
    // A small one holds 604 × 304: a large one and two of them hold 1.094 m², six small ones cost more.
    expect(cutSheets(parts, two, saw, { rounds: 50 }).sums.leastSheetArea).toBe(1220 * 620 + 2 * 620 * 320);
  });

  test('numbers its sheets through all foams, offcuts first, the fullest of a size first', () => {
    const parts = [
      ...Array.from({ length: 3 }, (_, i) => part(`b${i}`, 1190, 290)),
      ...Array.from({ length: 2 }, (_, i) => part(`c${i}`, 1190, 290, { foam: 'thin' })),
      part('little', 140, 90, { foam: 'thin' }),
    ];
    const thin: CutStock = { ...stock, id: 'thin', foam: 'thin' };
    const rest: CutStock = { id: 'rest', foam: 'thin', length: 170, width: 120, count: 1, offcut: true };
    const plan = cutSheets(parts, [stock, thin, rest], saw, { rounds: 300 });
    expect(plan.sheets.map(({ number, stock: id, blanks }) => [number, id, blanks.length])).toEqual([
      [1, 'full', 2],
      [2, 'full', 1],
      [3, 'rest', 1],
      [4, 'thin', 2],
    ]);
  });

  // By hand: prices decide where every new sheet has one, else the area does.
  test('takes prices where all new sheets have one', () => {
    const parts = [part('a', 500, 200)];
    const large = { ...stock, price: 5 };
    const small: CutStock = { id: 'small', foam: 'fill', length: 620, width: 320 };
    const taken = (sheets: readonly CutStock[]) => cutSheets(parts, sheets, saw, { rounds: 50 }).sheets[0]!.stock;
    expect(taken([large, { ...small, price: 9 }])).toBe('full');
    expect(taken([large, small])).toBe('small');
    expect(taken([large, { ...small, price: 0 }])).toBe('small');
    // Foam of an offcut counts a twentieth of the cheapest new foam.
    const rest: CutStock = { ...stock, id: 'rest', offcut: true, price: 4 };
    expect(taken([{ ...small, price: 9 }, rest])).toBe('rest');
    expect(cutSheets(parts, [{ ...small, price: 9 }, rest], saw, { rounds: 50 }).sums.price).toBe(4);
  });
});
