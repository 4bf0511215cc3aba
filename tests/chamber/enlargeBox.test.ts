import { describe, expect, test } from 'vitest';
import { carve, type Carved } from '../../src/chamber/carve.js';
import { enlarged, type IsFree, type Limits } from '../../src/chamber/enlarge.js';
import { CENTRE, proofIn, specWith } from './box.js';

const ASKED = { deck: 10, bottom: 12, rail: 20 };
const BOX = { length: 1000, half: 200, height: 100 };
const spec = specWith({});
const proof = proofIn(BOX, ASKED);
const WIDE: Limits = { from: 0, to: 1000, low: -100, high: 300, depth: 400 };
/** Less of a chamber is not worth an edge's move. */
const WORTH = 0.006;

/** A chamber that already meets its deck skin, so that carving leaves it as it is. */
const start = carve(
  CENTRE,
  { top: [[300, 89.9], [500, 89.9]], bottom: [[300, 30], [500, 30]] }, // prettier-ignore
  50,
  spec,
  proof,
) as Carved;

function grown(limits: Limits, isFree: IsFree = () => true, of = spec) {
  const { profile, depth, walls } = enlarged(CENTRE, start, of, proof, () => limits, isFree);
  const s = profile.map(([each]) => each);
  const z = profile.map(([, each]) => each);
  const sides = { from: Math.min(...s), to: Math.max(...s), low: Math.min(...z), high: Math.max(...z), depth };
  // By hand: in a box every wall is the difference of two figures.
  expect(walls.thickness.deck).toBeCloseTo(BOX.height - sides.high, 6);
  expect(walls.thickness.bottom).toBeCloseTo(sides.low, 6);
  expect(walls.thickness.rail).toBeCloseTo(Math.min(sides.from, BOX.length - sides.to, BOX.half - sides.depth), 6);
  return sides;
}
const expectNear = (has: number, most: number, size: number) => {
  expect(has).toBeLessThanOrEqual(most + 1e-6);
  expect(has).toBeGreaterThanOrEqual(most - WORTH * size);
};

describe('a chamber in a box, let grow', () => {
  test('fills it to within its walls on every side', () => {
    const { from, to, low, high, depth } = grown(WIDE);
    expectNear(high, 90, 78);
    expectNear(-low, -12, 78);
    expectNear(-from, -20, 960);
    expectNear(to, 980, 960);
    expectNear(depth, 180, 180);
  });

  test('goes to its limits, and not beyond, where walls would let it', () => {
    const limits: Limits = { from: 291, to: 523, low: 26, high: 89.9, depth: 61 };
    expect(grown(limits)).toEqual(limits);
    expect(grown({ from: 300, to: 500, low: 30, high: 89.9, depth: 50 })).toEqual({
      from: 300,
      to: 500,
      low: 30,
      high: 89.9,
      depth: 50,
    });
  });

  test.each([
    ['nose', { from: 270 }],
    ['tail', { to: 530 }],
    ['bottom', { low: 20 }],
    ['depth', { depth: 70 }],
  ] as const)('moves its %s alone where nothing else may move', (_, more) => {
    const still = { from: 300, to: 500, low: 30, high: 89.9, depth: 50 };
    expect(grown({ ...still, ...more })).toEqual({ ...still, ...more });
  });

  test('keeps off what is in the way, and comes near to it', () => {
    const { to, from } = grown(WIDE, ({ profile }) => profile.every(([s]) => s <= 610));
    expectNear(to, 610, 310);
    expectNear(-from, -20, 590);
    const deep = grown(WIDE, ({ depth }) => depth[0] === 0 && depth[1] <= 90);
    expectNear(deep.depth, 90, 90);
    const none = grown(WIDE, () => false);
    expect(none).toEqual({ from: 300, to: 500, low: 30, high: 89.9, depth: 50 });
  });
});
