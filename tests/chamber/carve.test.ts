import { describe, expect, test } from 'vitest';
import { carve, easedEdges, MET, shifted, type Carved } from '../../src/chamber/carve.js';
import { carveWithin } from '../../src/chamber/carveWithin.js';
import type { Edges } from '../../src/chamber/edges.js';
import { CENTRE, proofBeside, proofIn, specWith, type Box } from './box.js';

const ASKED = { deck: 10, bottom: 12, rail: 20 };
const spec = specWith({});

/** A rectangle from end to end and from low to high. */
const edges = (from: number, to: number, low: number, high: number): Edges => ({
  top: [
    [from, high],
    [to, high],
  ],
  bottom: [
    [from, low],
    [to, low],
  ],
});
/** A carved chamber's six sides. */
function sidesOf(carved: Carved | { failed: string }) {
  if ('failed' in carved) throw new Error(carved.failed);
  const s = carved.profile.map(([each]) => each);
  const z = carved.profile.map(([, each]) => each);
  return { from: Math.min(...s), to: Math.max(...s), low: Math.min(...z), high: Math.max(...z), depth: carved.depth };
}
const size = (by: number): Box => ({ length: 1000 * by, half: 200 * by, height: 100 * by });
const proof = proofIn(size(1), ASKED);

// By hand: in a box every wall is the difference of two figures.
describe.each([
  ['a board', 1],
  ['a ship', 10],
])('a chamber carved into a box as large as %s', (_, by) => {
  const box = size(by);
  const here = proofIn(box, ASKED);
  const middle = { from: 300 * by, to: 500 * by, low: 30 * by, high: 70 * by };
  const drawn = (more: Partial<typeof middle>) => {
    const { from, to, low, high } = { ...middle, ...more };
    return edges(from, to, low, high);
  };
  /** Walls must be met, and not by more than the corrections say. */
  const expectMet = (has: number, asked: number) => {
    expect(has).toBeGreaterThanOrEqual(asked - 1e-9);
    expect(has).toBeLessThanOrEqual(asked + 1);
  };
  /** Where a correction has left something over, the top may rise. */
  const expectNoLower = (high: number) => {
    expect(high).toBeGreaterThanOrEqual(middle.high);
    expect(high).toBeLessThan(middle.high + 5);
  };

  test('is lowered where its deck skin is too thin, and nothing else of it changes', () => {
    const high = box.height - ASKED.deck + 2;
    const sides = sidesOf(carve(CENTRE, drawn({ high }), 50 * by, spec, here));
    expectMet(box.height - sides.high, ASKED.deck);
    expect(sides).toMatchObject({ from: middle.from, to: middle.to, low: middle.low, depth: 50 * by });
  });

  test('is raised where its bottom skin is too thin', () => {
    const sides = sidesOf(carve(CENTRE, drawn({ low: ASKED.bottom - 2 }), 50 * by, spec, here));
    expectMet(sides.low, ASKED.bottom);
    expect(sides).toMatchObject({ from: middle.from, to: middle.to, high: middle.high, depth: 50 * by });
  });

  test('is drawn in at the end that comes too near to the nose, or to the tail', () => {
    const nose = sidesOf(carve(CENTRE, drawn({ from: ASKED.rail - 2 }), 50 * by, spec, here));
    expectMet(nose.from, ASKED.rail);
    expect(nose).toMatchObject({ to: middle.to, low: middle.low, depth: 50 * by });
    expectNoLower(nose.high);
    const tail = sidesOf(carve(CENTRE, drawn({ to: box.length - ASKED.rail + 2 }), 50 * by, spec, here));
    expectMet(box.length - tail.to, ASKED.rail);
    expect(tail).toMatchObject({ from: middle.from, low: middle.low, depth: 50 * by });
    expectNoLower(tail.high);
  });

  test('is made less deep where it comes too near to the side', () => {
    const sides = sidesOf(carve(CENTRE, drawn({}), box.half - ASKED.rail + 2, spec, here));
    expectMet(box.half - sides.depth, ASKED.rail);
    expect(sides).toMatchObject({ from: middle.from, to: middle.to, low: middle.low });
    expectNoLower(sides.high);
  });
});

describe('a chamber with the rail over its middle, or under it, as where a rail is drawn in far', () => {
  const drawn = edges(300, 500, 30, 70);

  test('is lowered under it, and stays as it is otherwise', () => {
    const sides = sidesOf(carve(CENTRE, drawn, 50, spec, proofBeside(size(1), [400, 15, 85], ASKED)));
    expect(85 - sides.high).toBeGreaterThanOrEqual(ASKED.rail);
    expect(85 - sides.high).toBeLessThan(ASKED.rail + 5);
    expect(sides).toMatchObject({ from: 300, to: 500, low: 30, depth: 50 });
  });

  test('is raised over it', () => {
    const sides = sidesOf(carve(CENTRE, drawn, 50, spec, proofBeside(size(1), [400, 15, 14], ASKED)));
    expect(sides.low - 14).toBeGreaterThanOrEqual(ASKED.rail);
    expect(sides.low - 14).toBeLessThan(ASKED.rail + 5);
    expect(sides).toMatchObject({ from: 300, to: 500, depth: 50 });
    expect(sides.high).toBeGreaterThanOrEqual(70);
  });

  test('is drawn in before what hangs by an end, and taken back before what hangs beyond its depth', () => {
    const end = sidesOf(carve(CENTRE, drawn, 50, spec, proofBeside(size(1), [290, 15, 50], ASKED)));
    expect(end.from - 291).toBeGreaterThanOrEqual(ASKED.rail);
    expect(end).toMatchObject({ to: 500, low: 30, depth: 50 });
    const tail = sidesOf(carve(CENTRE, drawn, 50, spec, proofBeside(size(1), [510, 15, 50], ASKED)));
    expect(509 - tail.to).toBeGreaterThanOrEqual(ASKED.rail);
    expect(tail).toMatchObject({ from: 300, low: 30, depth: 50 });
    const deep = sidesOf(carve(CENTRE, drawn, 50, spec, proofBeside(size(1), [400, 60, 50], ASKED)));
    expect(59 - deep.depth).toBeGreaterThanOrEqual(ASKED.rail);
    expect(deep).toMatchObject({ from: 300, to: 500, low: 30 });
  });
});

describe('a chamber that stands as drawn', () => {
  test('grows toward the wall that has least to spare until that is met within a third of a millimetre', () => {
    const up = sidesOf(carve(CENTRE, edges(300, 500, 30, 85), 50, spec, proof));
    expect(100 - up.high).toBeGreaterThanOrEqual(ASKED.deck);
    expect(100 - up.high).toBeLessThanOrEqual(ASKED.deck + MET);
    expect(up.low).toBe(30);
    const down = sidesOf(carve(CENTRE, edges(300, 500, 16, 60), 50, spec, proof));
    expect(down.low).toBeGreaterThanOrEqual(ASKED.bottom);
    expect(down.low).toBeLessThanOrEqual(ASKED.bottom + MET);
    expect(down.high).toBe(60);
  });

  test('stays as it is where a wall is met already', () => {
    const drawn = edges(300, 500, 30, 90 - MET);
    expect(carve(CENTRE, drawn, 50, spec, proof)).toMatchObject({ edges: drawn, depth: 50 });
  });

  test('has its walls told: by hand, what lies between it and the box', () => {
    const carved = carve(CENTRE, edges(300, 500, 30, 89.9), 50, spec, proof) as Carved;
    const { deck, bottom, rail } = carved.walls.thickness;
    expect([deck, bottom, rail].map((each) => Number(each.toFixed(6)))).toEqual([10.1, 30, 150]);
  });
});

describe('no chamber is left', () => {
  test('where a correction makes it less than the smallest: in length, height, depth', () => {
    const failed = { failed: 'unproved' };
    expect(carve(CENTRE, edges(18, 59, 30, 70), 50, spec, proof)).toEqual(failed);
    expect(carve(CENTRE, edges(300, 500, 77, 92), 50, spec, proof)).toEqual(failed);
    const thin = proofIn({ ...size(1), half: 35 }, ASKED);
    expect(carve(CENTRE, edges(300, 500, 30, 70), 16, spec, thin)).toEqual(failed);
    // With a little more room each stands.
    for (const carved of [
      carve(CENTRE, edges(18, 64, 30, 70), 50, spec, proof),
      carve(CENTRE, edges(300, 500, 70, 92), 50, spec, proof),
      carve(CENTRE, edges(300, 500, 30, 70), 15, spec, thin),
    ])
      expect(carved).toHaveProperty('walls');
  });

  test('where the cutter does not fit into its corners', () => {
    expect(carve(CENTRE, edges(300, 500, 50, 59), 50, spec, proof)).toEqual({ failed: 'cutter' });
    expect(carve(CENTRE, edges(300, 309, 30, 70), 50, spec, proof)).toEqual({ failed: 'cutter' });
  });
});

describe('a chamber that passes under or over something', () => {
  test('stays between the two heights although its walls would let it grow', () => {
    const drawn = edges(300, 500, 40, 60);
    expect(carveWithin({ low: 40, high: 60 }, CENTRE, drawn, 50, spec, proof)).toMatchObject({
      edges: drawn,
      depth: 50,
    });
    const free = sidesOf(carveWithin({ low: -Infinity, high: Infinity }, CENTRE, drawn, 50, spec, proof));
    expect(free.low).toBeLessThan(30);
  });

  test('is corrected for its walls, and then drawn in again where it has grown past a height', () => {
    // Too near to the side: carving takes its depth back and then lets it grow up to the deck.
    const sides = sidesOf(carveWithin({ low: -Infinity, high: 80 }, CENTRE, edges(300, 500, 40, 75), 182, spec, proof));
    expect(200 - sides.depth).toBeGreaterThanOrEqual(ASKED.rail);
    expect(sides.high).toBeLessThanOrEqual(80);
    expect(sides.high).toBeGreaterThan(60);
    const over = sidesOf(carveWithin({ low: 20, high: Infinity }, CENTRE, edges(300, 500, 25, 75), 182, spec, proof));
    expect(over.low).toBeGreaterThanOrEqual(20);
  });

  test('is given up where nothing as high as the smallest is left', () => {
    const band = { low: 40, high: 55.5 };
    expect(
      carveWithin(band, CENTRE, edges(300, 500, 40, 55.5), 181, spec, proofIn(size(1), { ...ASKED, rail: 300 })),
    ).toEqual({ failed: 'unproved' });
  });
});

test('edges are moved up and down by themselves, and eased to half the cutter’s width', () => {
  const drawn = edges(0, 100, 0, 50);
  expect(shifted(drawn, 2, -3)).toEqual(edges(0, 100, -3, 52));
  expect(shifted(drawn, 0, 0)).toEqual(drawn);
  const { contour } = easedEdges(drawn, spec)!;
  expect(contour.map(({ x, y }) => [x, y].map((each) => Math.round(each)))).toContainEqual([5, 0]);
});
