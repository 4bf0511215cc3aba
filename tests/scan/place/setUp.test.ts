import { describe, expect, it } from 'vitest';
import { volumeOf } from '../../../src/board/measure.js';
import { after, moved, shiftedBy, turnAbout, type Rigid } from '../../../src/scan/place/rigid.js';
import { scanOf, type Scan, type ScanAsked } from '../../../src/scan/whole/scan.js';
import type { Triangles } from '../../../src/scan/triangles.js';
import { kernel } from '../../oracle/kernel.js';
import { ellipsoidBoard, HALF, holed, noisy, placed, randomFrom, rockerAt, stlBytes, VOLUME } from '../bodies.js';

const solids = await kernel();
const board = ellipsoidBoard(solids, 192);
const middle = shiftedBy(HALF.length, 0, HALF.thickness);
const AT_MOST = { angle: 0.1, shift: 0.5 };

function anywhere(random: () => number): Rigid {
  const angle = () => 2 * Math.PI * random();
  const far = () => 4000 * (random() - 0.5);
  const turn = after(turnAbout(2, angle()), after(turnAbout(1, angle()), turnAbout(0, angle())));
  return after(shiftedBy(far(), far(), far()), turn);
}

function scan(mesh: Triangles, asked: Partial<ScanAsked> = {}): Scan {
  const found = scanOf(stlBytes(mesh), 'board.stl', { unit: 'mm', ...asked });
  if ('kind' in found) throw new Error(JSON.stringify(found));
  return found;
}

/** How far a scan is turned, degrees, and where its middle lies off, mm, against where the board was made. */
function off({ setUp }: Scan, put: Rigid): { angle: number; shift: number } {
  const whole = after(setUp.place, put);
  const trace = whole.turn[0]! + whole.turn[4]! + whole.turn[8]!;
  const [x, y, z] = moved(whole, [0, 0, 0]);
  const [a, b, c] = moved(middle, [0, 0, 0]);
  return {
    angle: (Math.acos(Math.min(1, (trace - 1) / 2)) * 180) / Math.PI,
    shift: Math.hypot(x - a, y - b, z - c),
  };
}

describe('a board of closed form, turned and shifted at random, is laid as it was made', () => {
  const random = randomFrom(20260);
  const cases = Array.from({ length: 6 }, (_, i) => ({ put: anywhere(random), noise: [0, 0.1, 0.5, 1][i % 4]! }));

  it.each(cases)('within 0.1° and 0.5 mm, its volume within 0.2 %, with $noise mm of noise', ({ put, noise }) => {
    const made = scan(noisy(placed(board, put), noise, random));
    const { angle, shift } = off(made, put);
    expect(angle).toBeLessThan(AT_MOST.angle);
    // The tip of a noisy scan is its furthest point: out by as much as the furthest of its points is.
    expect(shift).toBeLessThan(AT_MOST.shift + 3 * noise);
    expect(Math.abs(volumeOf({ ...made.mesh } as Parameters<typeof volumeOf>[0]) / VOLUME - 1)).toBeLessThan(0.002);
    expect(made.setUp).toMatchObject({ isNoseSure: true, isDeckSure: true });
    expect(made.holes).toEqual([]);
  });

  it('with a hole in a rail and another in the deck', () => {
    const put = anywhere(random);
    const made = scan(placed(holed(holed(board, [300, 255, rockerAt(300)], 60), [-500, 50, 60], 40), put));
    const { angle, shift } = off(made, put);
    expect(angle).toBeLessThan(AT_MOST.angle);
    expect(shift).toBeLessThan(AT_MOST.shift);
    expect(made.holes).toHaveLength(2);
    const [x] = made.holes[0]!.rim[0]!;
    expect(Math.min(Math.abs(x - HALF.length - 300), Math.abs(x - HALF.length + 500))).toBeLessThan(110);
  });
});

describe('what a builder says of it', () => {
  const put = after(shiftedBy(100, 20, 30), turnAbout(2, 0.4));

  it('turned round, nose is where the tail was; over, the deck where the bottom was', () => {
    const plain = scan(placed(board, put));
    const round = scan(placed(board, put), { round: true });
    const over = scan(placed(board, put), { over: true });
    const tip = [-HALF.length, 0, rockerAt(-HALF.length)] as const;
    const at = (made: Scan) => moved(after(made.setUp.place, put), tip);
    expect(at(plain)[0]).toBeCloseTo(0, 0);
    expect(at(round)[0]).toBeGreaterThan(2 * HALF.length - 5);
    expect(at(over)[2]).toBeLessThan(HALF.thickness);
    expect(at(plain)[2]).toBeGreaterThan(2 * HALF.thickness);
  });

  it('three marks lay it by themselves, also where its shape would have it the other way', () => {
    const reversed = after(put, turnAbout(2, Math.PI));
    const marks = [
      [-900, 60],
      [200, -180],
      [1000, 90],
    ].map(([x, y]) => {
      const z = HALF.thickness * Math.sqrt(1 - (x! / HALF.length) ** 2 - (y! / HALF.width) ** 2) + rockerAt(x!);
      // On this board the tail is the higher end.
      return { found: moved(reversed, [x!, y!, z]), x: HALF.length - x!, y: -y! };
    });
    const made = scan(placed(board, reversed), { marks });
    const [x, y] = moved(after(made.setUp.place, reversed), [-HALF.length, 0, rockerAt(-HALF.length)]);
    expect(x).toBeGreaterThan(2 * HALF.length - 5);
    expect(Math.abs(y)).toBeLessThan(AT_MOST.shift);
    expect(made.setUp.marksOff).toBeLessThan(3);
  });

  it('marks that cannot be are refused', () => {
    const marks = [1, 2, 3].map((i) => ({ found: [100 * i, 40 * i * i, 0] as const, x: 700 * i, y: -80 * i }));
    expect(scanOf(stlBytes(board), 'a.stl', { unit: 'mm', marks })).toMatchObject({ kind: 'marks' });
  });

  it('stretches it to a length, and refuses one that is another board', () => {
    expect(scan(board, { length: 2 * HALF.length * 1.01 }).form.length).toBeCloseTo(2 * HALF.length * 1.01, 3);
    expect(scanOf(stlBytes(board), 'a.stl', { unit: 'mm', length: 2500 })).toMatchObject({ kind: 'knownLength' });
  });

  it.each([
    ['m', 0.001],
    ['in', 1 / 25.4],
  ] as const)('a file in %s that says mm is told what it would be', (unit, factor) => {
    const small = { ...board, positions: board.positions.map((value) => value * factor) };
    expect(scanOf(stlBytes(small), 'a.stl', { unit: 'mm' })).toMatchObject({
      kind: 'size',
      would: expect.arrayContaining([unit]) as string[],
    });
    expect(scan(small, { unit }).form.length).toBeCloseTo(2 * HALF.length, -1);
  });
});

describe('what is no board', () => {
  const half = (isKept: (z: number) => boolean): Triangles => {
    const kept: number[] = [];
    for (let t = 0; t < board.triangles.length; t += 3) {
      const [i] = board.triangles.subarray(t, t + 3);
      const z = board.positions[3 * i! + 2]! - rockerAt(board.positions[3 * i!]!);
      if (isKept(z)) kept.push(...board.triangles.subarray(t, t + 3));
    }
    return { ...board, triangles: Uint32Array.from(kept) };
  };

  it.each([
    ['only the deck', half((z) => z > 0), 'oneFace'],
    ['only the bottom', half((z) => z < -10), 'oneFace'],
    [
      'a ball',
      {
        ...board,
        positions: board.positions.map((v, i) => (v * 600) / [HALF.length, HALF.width, HALF.thickness][i % 3]!),
      },
      'noBoard',
    ],
  ])('%s', (_, mesh, kind) => {
    expect(scanOf(stlBytes(mesh), 'a.stl', { unit: 'mm' })).toMatchObject({ kind });
  });
});
