import { describe, expect, test } from 'vitest';
import { columnsOf, fromTurn, rowsOf, sidesOf, toTurn } from '../../src/board/spacing.js';
import { boxSection, surfaceBy } from './formulas.js';

/**
 * A chord over an angle a of a circle of radius R lies R (1 − cos a/2) off it, R a² / 8 where it is small (geometry
 * texts): an arc of angle A keeps within a sag of s in A √(R / 8 s) parts.
 */
const partsOfArc = (radius: number, angle: number, sag: number) => angle * Math.sqrt(radius / (8 * sag));
/** What trial places instead of the curve itself may be off by, as a share. */
const NEAR = 0.002;
/** Rows are tried at few places: over an eighth of half a turn a circle's chords are so much shorter than its arc. */
const FEW_TRIALS = 0.03;

/** The angle of a circle's half-section, from the keel −90° to the deck 90°, in three equal stretches run unevenly. */
const third = Math.PI / 3;
const uneven = (share: number) => (share + share * share) / 2;
const angleAt = (v: number) => -Math.PI / 2 + third * (Math.floor(v) + uneven(v - Math.floor(v)));
const circle = (v: number) => ({ across: Math.cos(angleAt(v)), up: (1 + Math.sin(angleAt(v))) / 2 });

describe('columns', () => {
  test.each([
    [0.018, 100],
    [0.5, 100],
    [0.018, 4],
  ])(
    'of a round section, sag %d mm and radius %d mm, part it into equal angles, as many as a circle takes',
    (sag, r) => {
      const round = surfaceBy({ half: () => r, thickness: 2 * r, section: circle });
      const vs = [...columnsOf(round, sag)];
      const each = Math.ceil(partsOfArc(r, third, sag));
      expect(vs).toHaveLength(3 * each + 1);
      vs.forEach((v, i) => {
        const angle = -Math.PI / 2 + (i * third) / each;
        expect(Math.abs(angleAt(Math.min(v, 3 - 1e-12)) - angle), `${i}`).toBeLessThan(NEAR * third);
      });
      for (const end of [0, 1, 2, 3]) expect(vs).toContain(end);
    },
  );

  test('of a section of straight lines are its ends', () => {
    expect([...columnsOf(surfaceBy({}), 0.018)]).toEqual([0, 1, 2, 3]);
  });

  test('are as close as the section that bends most asks, on whichever side and wherever it lies', () => {
    const sag = 0.05;
    const each = (half: (x: number, side: 0 | 1) => number, stations?: number[]) =>
      (columnsOf(surfaceBy({ half, thickness: 200, section: circle, ...(stations && { stations }) }), sag).length - 1) /
      3;
    // An ellipse as wide as 100 and as high as 100 is the circle; wider it takes more.
    const round = Math.ceil(partsOfArc(100, third, sag));
    expect(each(() => 100)).toBe(round);
    for (const side of [0, 1] as const) expect(each((_, s) => (s === side ? 400 : 100))).toBeGreaterThan(round);
    // Wide at a station that lies between the others, over less than a hundredth of the length, and at either tip.
    for (const x of [0, 487, 1000])
      expect(
        each((at) => (Math.abs(at - x) < 5 ? 400 : 100), [0, 487, 1000]),
        `${x}`,
      ).toBeGreaterThan(round);
    // Wide over a twentieth of the length where nothing was measured.
    for (const x of [100, 300, 525, 950])
      expect(each((at) => (Math.abs(at - x) < 25 ? 400 : 100))).toBeGreaterThan(round);
  });
});

describe('rows', () => {
  const vs = Float64Array.from([0, 1, 2, 3]);
  /** The outline of an arc of radius `r` over `length`. */
  const arc = (length: number, r: number) => (x: number) => Math.sqrt(Math.max(0, r * r - (x - length / 2) ** 2));

  test.each([
    [1000, 500, 0.018],
    [1000, 500, 2],
    [40, 20, 0.018],
  ])('of a round outline %d mm long with radius %d mm, sag %d mm, part it into equal angles', (length, r, sag) => {
    const xs = [...rowsOf(surfaceBy({ length, half: arc(length, r) }), vs, sag)];
    const count = xs.length - 1;
    const asked = partsOfArc(r, Math.PI, sag);
    expect(count).toBeGreaterThan((1 - FEW_TRIALS) * asked);
    expect(count).toBeLessThan(asked + 1);
    xs.forEach((x, i) => expect(x, `${i}`).toBeCloseTo(fromTurn((i * Math.PI) / count, length), 6));
  });

  // A gentle arc ends blunt: half a turn bends much where the arc begins, and trial places see that late.
  test.each([
    [1000, 900, 0.018],
    [3500, 9000, 0.018],
    [3500, 9000, 1],
  ])('of a gentle outline %d mm long with radius %d mm, sag %d mm, are hardly more than it takes', (length, r, sag) => {
    const half = Math.asin(length / 2 / r);
    const xs = [...rowsOf(surfaceBy({ length, half: arc(length, r) }), vs, sag)];
    const asked = partsOfArc(r, 2 * half, sag);
    expect(xs.length - 1).toBeGreaterThanOrEqual(Math.ceil(asked));
    expect(xs.length - 1).toBeLessThan(1.15 * asked + 1);
    for (let i = 1; i < xs.length; i++) {
      const angle = Math.asin((xs[i]! - length / 2) / r) - Math.asin((xs[i - 1]! - length / 2) / r);
      expect(r * (1 - Math.cos(angle / 2)), `${i}`).toBeLessThan(1.2 * sag);
    }
    expect([xs[0], xs.at(-1)]).toEqual([0, length]);
  });

  test('bend with a rocker as with an outline, on the side that bends, also where only what was measured does', () => {
    const [length, r, sag] = [1000, 500, 0.1];
    const down = (x: number) => r - Math.sqrt(Math.max(0, r * r - (x - r) ** 2));
    const rocker = rowsOf(surfaceBy({ length, bottom: down }), vs, sag);
    const outline = rowsOf(surfaceBy({ length, half: arc(length, r) }), vs, sag);
    expect([...rocker].map((x) => x.toFixed(6))).toEqual([...outline].map((x) => x.toFixed(6)));
    for (const side of [0, 1])
      expect(rowsOf(surfaceBy({ length, half: (x, s) => (s === side ? arc(length, r)(x) : 500) }), vs, sag)).toEqual(
        outline,
      );
    for (const side of [-1, 1]) {
      const raised = (x: number, y: number) => (side * y > 0 ? down(x) : 0);
      expect(rowsOf(surfaceBy({ length, raised }), vs, sag)).toEqual(rocker);
    }
  });

  test('see a single line that bends, wherever around the section it lies', () => {
    const [length, r, sag] = [1000, 500, 0.1];
    const count = rowsOf(surfaceBy({ length, half: arc(length, r) }), vs, sag).length;
    for (let tenths = 0; tenths <= 30; tenths++)
      for (const side of [-1, 1]) {
        const at = boxSection(tenths / 10);
        const raised = (x: number, y: number, up: number) =>
          Math.abs(up - at.up) < 0.05 && Math.abs(side * y - 100 * at.across) < 5 ? arc(length, r)(x) : 0;
        expect(rowsOf(surfaceBy({ length, raised }), vs, sag).length, `${tenths} ${side}`).toBe(count);
      }
  });

  test('take every station, and part each stretch between two by itself', () => {
    const [length, r, sag] = [1000, 500, 0.05];
    const stations = [0, 130, 500, 1000];
    const xs = [...rowsOf(surfaceBy({ length, stations, half: arc(length, r) }), vs, sag)];
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
    const angle = (x: number) => Math.asin((x - length / 2) / r);
    const counts = [0, 1, 2].map((i) => Math.ceil(partsOfArc(r, angle(stations[i + 1]!) - angle(stations[i]!), sag)));
    expect(stations.map((x) => xs.indexOf(x))).toEqual([0, counts[0], counts[0]! + counts[1]!, xs.length - 1]);
    expect(xs).toHaveLength(counts.reduce((sum, n) => sum + n, 1));
  });

  test('of what is straight are its stations', () => {
    expect([...rowsOf(surfaceBy({ stations: [0, 400, 1000] }), vs, 0.018)]).toEqual([0, 400, 1000]);
  });

  // The notch's edge runs straight in plan and climbs the crown: z = c (y / half)², y = slope · (x − from).
  test.each(['bottom', 'deck'])('follow the edge of a notch over a crowned %s, where no strand bends', (where) => {
    const [length, from, half, crown, sag] = [1000, 400, 300, 60, 0.05];
    const crowned = (v: number) => {
      const across = v < 2 ? v / 2 : 3 - v;
      return where === 'bottom'
        ? { across, up: v <= 2 ? 0.3 * across * across : 1 }
        : { across, up: v < 2 ? 0 : 1 - 0.3 * across * across };
    };
    const fine = Float64Array.from({ length: 301 }, (_, i) => i / 100);
    const inner = (x: number) => (x > from ? ((x - from) * 0.8 * half) / (length - from) : 0);
    const stations = [0, from, length];
    const xs = rowsOf(
      surfaceBy({ length, stations, half: () => half, thickness: crown / 0.3, section: crowned, inner, notchAt: from }),
      fine,
      sag,
    );
    const height = (x: number) => crown * (inner(x) / half) ** 2;
    const after = xs.filter((x) => x >= from);
    // Twice the bend of z along x is 2 c (slope / half)²; a chord over h lies that h² / 8 off: so many at least.
    const bend = 2 * crown * (0.8 / (length - from)) ** 2;
    const least = (length - from) / Math.sqrt((8 * sag) / bend);
    expect(after.length - 1).toBeGreaterThanOrEqual(Math.floor(least));
    expect(after.length - 1).toBeLessThan(1.6 * least + 2);
    for (let i = 1; i < after.length; i++) {
      const middle = (after[i - 1]! + after[i]!) / 2;
      const off = Math.abs((height(after[i - 1]!) + height(after[i]!)) / 2 - height(middle));
      expect(off, `${middle}`).toBeLessThan(1.1 * sag);
    }
    expect(xs.filter((x) => x < from)).toHaveLength(1);
  });
});

test('both sides are looked at where they differ, in outline or in what was measured', () => {
  expect(sidesOf(surfaceBy({}))).toEqual([1]);
  expect(sidesOf(surfaceBy({ half: (_, side) => 100 + side }))).toEqual([0, 1]);
  expect(sidesOf(surfaceBy({ raised: () => 0 }))).toEqual([0, 1]);
});

test('a length is half a turn: a circle’s diameter by the angle from its end', () => {
  for (const turn of [0, 0.3, Math.PI / 2, 2, Math.PI]) {
    expect(fromTurn(turn, 700)).toBeCloseTo(350 - 350 * Math.cos(turn), 9);
    expect(toTurn(fromTurn(turn, 700), 700)).toBeCloseTo(turn, 6);
  }
});
