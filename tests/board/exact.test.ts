import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { CHORD_ERROR } from '../../src/board/grid.js';
import { gridOf } from '../../src/board/gridOf.js';
import { meshOf, type Mesh } from '../../src/board/mesh.js';
import { volumeOf } from '../../src/board/measure.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { boardBy } from './bodies.js';
import { boxSection, gridBy, surfaceBy, type Formulas } from './formulas.js';

let k: ManifoldToplevel;
beforeAll(async () => {
  k = await kernel();
});

/** The triangles of a mesh: their corners, and how large they are seen along x, y and z, mm². */
function trianglesOf({ positions, triangles }: Mesh) {
  const corner = (vertex: number): number[] => [...positions.subarray(3 * vertex, 3 * vertex + 3)];
  return Array.from({ length: triangles.length / 3 }, (_, t) => {
    const [a, b, c] = [0, 1, 2].map((i) => corner(triangles[3 * t + i]!)) as [number[], number[], number[]];
    const [u, v] = [b, c].map((p) => p.map((value, i) => value - a[i]!)) as [number[], number[]];
    const area = [
      (u[1]! * v[2]! - u[2]! * v[1]!) / 2,
      (u[2]! * v[0]! - u[0]! * v[2]!) / 2,
      (u[0]! * v[1]! - u[1]! * v[0]!) / 2,
    ] as const;
    return { corners: [a, b, c], area };
  });
}

/** A mesh whose every edge is met once from either side, and which the kernel takes. */
function closed(given: Formulas) {
  const grid = gridOf(surfaceBy(given));
  const mesh = meshOf(grid);
  const edges = new Map<string, number>();
  for (let t = 0; t < mesh.triangles.length; t++) {
    const [a, b] = [mesh.triangles[t]!, mesh.triangles[t - (t % 3) + ((t + 1) % 3)]!];
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    edges.set(key, (edges.get(key) ?? 0) + (a < b ? 1 : -1));
  }
  expect([...edges.values()].filter((sum) => sum !== 0)).toEqual([]);
  const solid = solidOfMesh(k, mesh);
  expect([solid.status(), solid.genus()]).toEqual(['NoError', 0]);
  expect(solid.volume() / 1e6 / volumeOf(mesh)).toBeCloseTo(1, 5);
  solid.delete();
  return { grid, mesh, triangles: trianglesOf(mesh) };
}
/** mm². */
const ROUNDING = 1e-9;
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** Straight from one half-width to another, mm. */
const taper =
  (from: number, to: number, length = 1000) =>
  (x: number) =>
    from + ((to - from) * x) / length;

// Prisms and wedges: volume = plan area × thickness, exact.
describe('a board of flats has the volume of its prism, wherever its ends are', () => {
  test.each<[string, Formulas, number]>([
    ['a slab', {}, 200 * 1000 * 50],
    ['a slab that is wider on one side', { half: (_, side) => (side ? 120 : 30) }, 150 * 1000 * 50],
    ['a wedge in plan, pointed at the nose', { half: taper(0, 200) }, 200 * 1000 * 50],
    ['a wedge in plan, pointed at the tail', { half: taper(200, 0) }, 200 * 1000 * 50],
    ['a tiny one', { length: 2, half: () => 0.5, thickness: 0.25 }, 2 * 1 * 0.25],
    ['a huge one', { length: 20000, half: () => 3000, thickness: 900 }, 20000 * 6000 * 900],
    // The notch takes its triangle: half its width at the tail times its depth.
    [
      'a slab with a notch',
      { stations: [0, 700, 1000], notchAt: 700, inner: (x) => (x > 700 ? (60 * (x - 700)) / 300 : 0) },
      200 * 1000 * 50 - 60 * 300 * 50,
    ],
    [
      'a slab with a notch that ends in two points',
      { stations: [0, 700, 1000], notchAt: 700, inner: (x) => (x > 700 ? (100 * (x - 700)) / 300 : 0) },
      200 * 1000 * 50 - 100 * 300 * 50,
    ],
  ])('%s', (_, given, exact) => {
    const { mesh, triangles } = closed(given);
    expect((volumeOf(mesh) * 1e6) / exact).toBeCloseTo(1, 9);
    // Nothing is folded: what looks up and what looks down is the plan once each, whatever stands upright.
    const thick = given.thickness ?? 50;
    expect(sum(triangles.map(({ area }) => Math.abs(area[2]))) / ((2 * exact) / thick)).toBeCloseTo(1, 9);
    triangles.forEach(({ area }, t) => {
      const size = Math.hypot(...area);
      if (size === 0) return;
      area.forEach((part, axis) => expect(mesh.normals[3 * t + axis]).toBeCloseTo(part / size, 9));
      expect(mesh.patches[t]).toBe(area[2] > 0.7 * size ? 0 : area[2] < -0.7 * size ? 1 : 2);
    });
  });

  // A wedge from no thickness to 50 has half the slab's, and nothing to close at its nose.
  test('a wedge in thickness, sharp at nose or tail', () => {
    for (const rising of [true, false]) {
      const surface = { ...surfaceBy({}), thickness: (x: number) => (50 * (rising ? x : 1000 - x)) / 1000 };
      const mesh = meshOf(gridOf(surface));
      expect(volumeOf(mesh)).toBeCloseTo(5, 9);
      const tip = rising ? 0 : 1000;
      const corners = trianglesOf(mesh).filter(({ corners }) => corners.every(([x]) => x === tip));
      expect(sum(corners.map(({ area }) => Math.hypot(...area)))).toBe(0);
      const solid = solidOfMesh(k, mesh);
      expect([solid.status(), solid.genus()]).toEqual(['NoError', 0]);
      solid.delete();
    }
  });
});

// The shoelace rule over the section's corners (any geometry text).
const shoelace = (corners: readonly [number, number][]) =>
  Math.abs(
    sum(
      corners.map(([y, z], i) => {
        const [y2, z2] = corners[(i + 1) % corners.length]!;
        return y * z2 - y2 * z;
      }),
    ),
  ) / 2;

describe('an end cut straight across', () => {
  /** Sections as freed of size from the keel to the deck's middle, three to a stretch: hollow, crowned, waisted. */
  const shapes: [string, [number, number][]][] = [
    ['a box', [[0, 0], [0.5, 0], [1, 0], [1, 0.5], [1, 1], [0.5, 1], [0, 1]]],
    ['a lens', [[0, 0], [0.5, 0.1], [0.8, 0.3], [1, 0.5], [0.8, 0.8], [0.5, 0.95], [0, 1]]],
    ['a vee with a flat deck', [[0, 0], [0.3, 0.2], [0.7, 0.5], [1, 0.7], [0.9, 1], [0.4, 1], [0, 1]]],
    ['a hollow bottom', [[0, 0], [0.4, -0.1], [0.9, -0.2], [1, 0.4], [0.7, 0.9], [0.2, 1], [0, 1]]],
  ]; // prettier-ignore

  test.each(shapes)('is %s, once, looking out at nose and tail', (_, shape) => {
    const at = (v: number) => {
      const i = Math.min(5, Math.floor(2 * v));
      const share = 2 * v - i;
      const [a, b] = [shape[i]!, shape[i + 1]!];
      return { across: a[0] + share * (b[0] - a[0]), up: a[1] + share * (b[1] - a[1]) };
    };
    const { triangles } = closed({ half: (__, side) => (side ? 120 : 90), section: at });
    const [half, left, thick] = [120, 90, 50];
    const exact =
      shoelace(shape.map(([y, z]) => [half * y, thick * z])) + shoelace(shape.map(([y, z]) => [left * y, thick * z]));
    for (const [x, out] of [
      [0, -1],
      [1000, 1],
    ] as const) {
      const cap = triangles.filter(({ corners }) => corners.every((corner) => corner[0] === x));
      expect(sum(cap.map(({ area }) => out * area[0])) / exact).toBeCloseTo(1, 6);
      expect(Math.min(...cap.map(({ area }) => out * area[0]))).toBeGreaterThan(-ROUNDING);
    }
  });
});

// However unevenly columns stand on bottom and deck, an end is filled without a fold.
test.each([
  [[0, 0.1, 0.15, 0.2, 1, 2, 2.5, 3]],
  [[0, 0.5, 1, 2, 2.7, 2.8, 2.9, 2.95, 3]],
  [[0, 0.9, 0.95, 1, 1.5, 2, 2.02, 2.05, 2.1, 3]],
  [[0, 1, 2, 2.2, 2.4, 2.6, 2.8, 3]],
])('an end cut straight across is filled once from columns at %j', (vs) => {
  for (const [hollow, crown] of [
    [0.3, 0.3],
    [-0.4, 0.5],
    [0.4, -0.3],
  ] as const) {
    const section = (v: number) => {
      const { across, up } = boxSection(v);
      const low = hollow * across ** 2;
      const high = 1 - crown * across ** 2;
      return {
        across: v > 1 && v < 2 ? 1.2 : across,
        up: v < 1 ? low : v > 2 ? high : hollow + up * (1 - crown - hollow),
      };
    };
    const grid = gridBy(surfaceBy({ half: (_, side) => (side ? 120 : 90), section }), [0, 1000], vs);
    const same = Uint32Array.from({ length: 4 * vs.length }, (_, i) => i);
    const triangles = trianglesOf(meshOf({ ...grid, same, chordError: 0 }));
    const corners = vs.map((v) => section(v)).map(({ across, up }): [number, number] => [across, 50 * up]);
    const exact = 210 * shoelace(corners);
    for (const [x, out] of [
      [0, -1],
      [1000, 1],
    ] as const) {
      const cap = triangles.filter((each) => each.corners.every((corner) => corner[0] === x));
      expect(sum(cap.map(({ area }) => out * area[0])) / exact).toBeCloseTo(1, 9);
      expect(Math.min(...cap.map(({ area }) => out * area[0]))).toBeGreaterThan(-ROUNDING);
    }
  }
});

test('a cell is cut along its shorter diagonal, on both sides, however its corners lie', () => {
  let state = 20261127;
  const draw = () => ((state = (state * 48271) % 2147483647) / 2147483647) * 100;
  const [rows, columns] = [4, 5];
  const positions = Float64Array.from({ length: rows * 2 * columns * 3 }, draw);
  const same = Uint32Array.from({ length: rows * 2 * columns }, (_, i) => i);
  const { triangles } = meshOf({ ...gridOf(surfaceBy({})), rows, columns, apex: 2, positions, same, notchRow: rows });
  const at = (i: number) => [...positions.subarray(3 * i, 3 * i + 3)];
  const apart = (i: number, j: number) => Math.hypot(...at(i).map((value, axis) => value - at(j)[axis]!));
  /** How many triangles have both corners. */
  const shared = (i: number, j: number) =>
    Array.from({ length: triangles.length / 3 }, (_, t) => [...triangles.subarray(3 * t, 3 * t + 3)]).filter(
      (corners) => corners.includes(i) && corners.includes(j),
    ).length;
  for (let row = 0; row + 1 < rows; row++)
    for (const side of [0, 1])
      for (let column = 0; column + 1 < columns; column++) {
        const a = (row * 2 + side) * columns + column;
        const [b, c, d] = [a + 1, a + 2 * columns + 1, a + 2 * columns];
        const isFirst = apart(a, c) < apart(b, d);
        expect([shared(a, c), shared(b, d)], `${row} ${side} ${column}`).toEqual(isFirst ? [2, 0] : [0, 2]);
      }
});

describe('points around a row are one where they coincide, and only there', () => {
  test.each<[string, Formulas]>([
    ['pointed tips', { half: (x) => (x * (1000 - x)) / 2500 }],
    ['a lens whose bottom begins in one point', { section: (v) => boxSection(Math.max(0.4, v)) }],
    ['a section that stands still on the way', { section: (v) => boxSection(v < 1 ? v : Math.max(1.5, v)) }],
    ['no thickness at all', { thickness: 0 }],
    ['a point for a board', { thickness: 0, half: () => 0 }],
    ['a notch', { stations: [0, 700, 1000], notchAt: 700, inner: (x) => (x > 700 ? (100 * (x - 700)) / 300 : 0) }],
  ])('%s', (_, given) => {
    const { positions, same, rows, columns } = gridOf(surfaceBy({ ...given, half: given.half ?? (() => 100) }));
    const at = (i: number) => `${positions[3 * i + 1]} ${positions[3 * i + 2]}`;
    for (let row = 0; row < rows; row++) {
      const first = row * 2 * columns;
      for (let i = first; i < first + 2 * columns; i++) {
        expect(at(same[i]!), `${row} ${i - first}`).toBe(at(i));
        expect(same[same[i]!]).toBe(same[i]);
        // Neighbours around the row, and the two halves where they meet.
        const column = (i - first) % columns;
        const isLeft = i < first + columns;
        if (column > 0 && at(i) === at(i - 1)) expect(same[i], `${row} ${i - first}`).toBe(same[i - 1]);
        if (isLeft && at(i) === at(i + columns)) expect(same[i], `${row} ${i - first}`).toBe(same[i + columns]);
      }
    }
  });
});

describe('a grid is split no further than it is worth', () => {
  test('at a jump along the board it ends three hundredths of a millimetre from it', () => {
    const { xs } = gridOf(surfaceBy({ half: (x) => (x < 333.3 ? 100 : 90) }));
    const gaps = [...xs.slice(1)].map((x, i) => x - xs[i]!);
    const at = xs.findIndex((x) => x >= 333.3);
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(0.03);
    expect(xs[at]! - xs[at - 1]!).toBeLessThan(0.06);
    expect(xs.every((x, i) => i === 0 || x > xs[i - 1]!)).toBe(true);
  });

  test('at a jump around the section it ends a thousandth of a stretch from it', () => {
    const { vs } = gridOf(
      surfaceBy({ section: (v) => (v < 0.3 ? boxSection(v) : { ...boxSection(v), up: 0.1 + boxSection(v).up }) }),
    );
    const gaps = [...vs.slice(1)].map((v, i) => v - vs[i]!);
    const at = vs.findIndex((v) => v >= 0.3);
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(1 / 1024);
    expect(vs[at]! - vs[at - 1]!).toBeLessThan(2 / 1024);
  });

  // A circle of radius R within e takes π √(R / 8 e) chords (any geometry text); what rows and columns share is less.
  test.each([CHORD_ERROR, 1])(
    'along a round outline it keeps within %d mm, with hardly more rows than that takes',
    (error) => {
      const half = (x: number) => Math.sqrt(Math.max(0, 500 ** 2 - (x - 500) ** 2));
      const { xs, chordError } = gridOf(surfaceBy({ half }), error);
      expect(chordError).toBe(error);
      const asked = Math.PI * Math.sqrt(500 / (8 * error));
      expect(xs.length - 1).toBeGreaterThan(asked);
      expect(xs.length - 1).toBeLessThan(2 * asked);
    },
  );
});

test('a board measures what was drawn: width of both sides, thickness, litres, plan', () => {
  const outline = (half: number) => ({
    nose: { kind: 'square', half } as const,
    tail: { kind: 'square', half } as const,
    points: [{ x: 500, half }],
  });
  const box = (half: number) => [
    { y: 0, z: 0, edge: true },
    { y: half, z: 0, edge: true },
    { y: half, z: 30, edge: false },
    { y: half, z: 60, edge: true },
    { y: 0, z: 60, edge: true },
  ];
  const spec = boardBy(
    1000,
    outline(120),
    [0, 1000].map((x) => ({ x, bottom: 0, thickness: 60 })),
    [{ x: 500, kind: 'points', points: box(120) }],
  );
  const one = boardOf({ ...spec, left: outline(100) });
  expect([one.width, one.thickness, one.length]).toEqual([220, 60, 1000]);
  expect(one.volume).toBeCloseTo(0.22 * 60, 4);
  expect(one.area).toBeCloseTo(0.22, 5);
  expect(boardOf(spec).width).toBe(240);
  expect(boardOf({ ...spec, left: outline(130) }).width).toBe(250);
});
