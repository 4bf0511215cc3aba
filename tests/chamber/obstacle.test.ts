import { Clipper, FillRule } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blockedBy, type PlanObstacle, type RowObstacle } from '../../src/chamber/obstacle.js';
import type { Point } from '../../src/contour/point.js';
import type { Face, Row } from '../../src/layup/layup.js';
import { evenly } from '../evenly.js';

const SEED = 20261127;
/** Clipper counts in whole numbers: ten-thousandths of a millimetre here. */
const SCALE = 10_000;
/** What that may shift a corner where two edges meet at a sharp angle, mm. */
const NEAR = 0.02;

/** A row from a face through `y` at x = 0, turned by an angle, toward +y or −y. */
const rowAt = (y: number, turn: number, way: 1 | -1): Row => {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const face: Face = {
    id: 'F',
    on: 'in',
    piece: 'P',
    joint: 'J',
    origin: [0, y],
    along: [c, s],
    inward: [-way * s, way * c],
  };
  return { id: 'R1', side: 'R', number: 1, piece: 'P', face, members: [], end: 'rail', parity: 0 };
};

/** What of an outline lies behind the face down to a depth, in the face's frame, by clipper2-ts. */
function within(outline: readonly Point[], { face: { origin, along, inward } }: Row, deep: number): Point[] {
  const round = (value: number) => Math.round(value * SCALE);
  const path = outline.map(([x, y]) => {
    const [dx, dy] = [x - origin[0], y - origin[1]];
    return { x: round(dx * along[0] + dy * along[1]), y: round(dx * inward[0] + dy * inward[1]) };
  });
  const far = 1e5;
  const strip = [
    { x: round(-far), y: 0 },
    { x: round(far), y: 0 },
    { x: round(far), y: round(deep) },
    { x: round(-far), y: round(deep) },
  ];
  return Clipper.intersect([path], [strip], FillRule.NonZero)
    .flat()
    .map(({ x, y }): Point => [x / SCALE, y / SCALE]);
}

const outlines = fc
  .record({
    size: fc.constantFrom(3, 60, 2000),
    corners: fc.array(evenly(0.3, 1), { minLength: 3, maxLength: 8 }),
    x: evenly(0, 3000),
    y: evenly(-1, 1),
  })
  .map(({ size, corners, x, y }) =>
    corners.map((radius, i): Point => {
      const angle = (2 * Math.PI * i) / corners.length + 0.1;
      return [x + size * radius * Math.cos(angle), y * 300 + size * radius * Math.sin(angle)];
    }),
  );
const rows = fc
  .tuple(fc.integer({ min: -200, max: 200 }), evenly(-0.1, 0.1), fc.constantFrom(1, -1))
  .map(([y, turn, way]) => rowAt(y, turn, way as 1 | -1));
const plain = (outline: readonly Point[]): PlanObstacle => ({ on: 'plan', why: 'keep-out', name: 'vent', outline });

test(`a keep-out blocks the stretch that its outline takes behind the face, no more and no less (seed ${SEED})`, () => {
  let [met, missed] = [0, 0];
  fc.assert(
    fc.property(outlines, rows, fc.integer({ min: 1, max: 250 }), (outline, row, deep) => {
      const shared = within(outline, row, deep).map(([s]) => s);
      const blocked = blockedBy(plain(outline), row, deep);
      if (shared.length === 0) {
        missed++;
        // What clipper rounds away is no stretch to speak of.
        if (blocked) expect(blocked.to - blocked.from).toBeLessThan(NEAR);
        return;
      }
      met++;
      expect(Math.abs(blocked!.from - Math.min(...shared))).toBeLessThan(NEAR);
      expect(Math.abs(blocked!.to - Math.max(...shared))).toBeLessThan(NEAR);
      expect([blocked!.low, blocked!.high]).toEqual([-Infinity, Infinity]);
    }),
    { seed: SEED, numRuns: 600 },
  );
  expect(Math.min(met, missed)).toBeGreaterThan(50);
});

test('what only touches a chamber, from any side, does not meet it', () => {
  const row = rowAt(0, 0, 1);
  const box = (y0: number, y1: number): Point[] => [[100, y0], [200, y0], [200, y1], [100, y1]]; // prettier-ignore
  expect(blockedBy(plain(box(50, 80)), row, 50)).toBeUndefined();
  expect(blockedBy(plain(box(50, 80)), row, 50.001)).toEqual({ from: 100, to: 200, low: -Infinity, high: Infinity });
  expect(blockedBy(plain(box(-30, 0)), row, 50)).toBeUndefined();
  expect(blockedBy(plain(box(-30, 0.001)), row, 50)).toMatchObject({ from: 100, to: 200 });
});

describe('an obstacle that reaches in from one side only', () => {
  const row = rowAt(0, 0, 1);
  const outline: Point[] = [[0, -400], [900, -400], [900, 400], [0, 400]]; // prettier-ignore
  const ended = (from: 'deck' | 'bottom', points: readonly (readonly [number, number, number])[]): PlanObstacle => ({
    ...plain(outline),
    end: { from, points },
  });
  /** Heights that rise away from the middle, every 6 mm in and out of the face. */
  const points = Array.from({ length: 101 }, (_, i) => [450, 6 * (i - 50), 60 + Math.abs(i - 50)] as const);

  test('ends where it is lowest, or highest, behind the face, looked at a little beyond both', () => {
    for (const deep of [1, 30, 120]) {
      const near = points.filter(([, y]) => y >= 0 && y <= deep).map(([, , z]) => z);
      const around = points.filter(([, y]) => y > -12 && y < deep + 12).map(([, , z]) => z);
      const fromDeck = blockedBy(ended('deck', points), row, deep)!;
      expect(fromDeck.low).toBeLessThanOrEqual(Math.min(...near));
      expect(fromDeck.low).toBe(Math.min(...around));
      expect(fromDeck.high).toBe(Infinity);
      const fromBottom = blockedBy(ended('bottom', points), row, deep)!;
      expect(fromBottom.high).toBeGreaterThanOrEqual(Math.max(...near));
      expect(fromBottom.high).toBe(Math.max(...around));
      expect(fromBottom.low).toBe(-Infinity);
    }
  });

  test('does not look further than that: what lies behind a deeper chamber, or before the face, is not met', () => {
    const far = [[450, 80, 10], [450, -40, 10], [450, 10, 70]] as const; // prettier-ignore
    expect(blockedBy(ended('deck', far), row, 60)!.low).toBe(70);
    expect(blockedBy(ended('deck', far), row, 90)!.low).toBe(10);
  });

  test('blocks all the way where nothing is known of its end', () => {
    expect(blockedBy(ended('deck', []), row, 60)).toMatchObject({ low: -Infinity, high: Infinity });
    expect(blockedBy(ended('bottom', []), row, 60)).toMatchObject({ low: -Infinity, high: Infinity });
  });
});

test('an obstacle on a row blocks that row alone, and only chambers that go deep enough', () => {
  const blocked = { from: 1, to: 2, low: 3, high: 4 };
  const one: RowObstacle = { on: 'row', row: 'R1', why: 'dot', name: 'DR1.1', blocked, beyond: 40 };
  const row = rowAt(0, 0, 1);
  expect(blockedBy(one, row, 40)).toBeUndefined();
  expect(blockedBy(one, row, 40.001)).toEqual(blocked);
  expect(blockedBy(one, { ...row, id: 'R2' }, 90)).toBeUndefined();
});
