import { describe, expect, test } from 'vitest';
import { corrected } from '../../src/board/correct.js';
import { monotone } from '../../src/board/monotone.js';
import { cutNotch } from '../../src/board/notch.js';
import { outlineOf } from '../../src/board/outline.js';
import { edgeShare, sectionOf } from '../../src/board/section.js';
import { pointOn, surfaceOf } from '../../src/board/surface.js';
import type { BoardSpec, NumberedSection, OutlineSpec, TailShape } from '../../src/job/spec/board.js';
import { surfaceBy } from './formulas.js';

const numbers = (more: Partial<NumberedSection>): NumberedSection => ({
  kind: 'numbers',
  apex: 0.45,
  above: 0.78,
  below: 0.85,
  crown: 6,
  bottom: { kind: 'flat' },
  ...more,
});
const outline = (half: number, tail: TailShape = { kind: 'pin' }): OutlineSpec => ({
  nose: { kind: 'round' },
  tail,
  points: [200, 600, 1300].map((x, i) => ({ x, half: [0.7, 1, 0.8][i]! * half })),
});
const spec: BoardSpec = {
  length: 1500,
  right: outline(240),
  profile: [0, 700, 1500].map((x, i) => ({ x, bottom: [80, 0, 20][i]!, thickness: [10, 70, 12][i]! })),
  sections: [
    { x: 300, ...numbers({}) },
    { x: 800, ...numbers({ apex: 0.4, crown: 4, bottom: { kind: 'roll', depth: 3 } }) },
    { x: 1200, ...numbers({ apex: 0.2, bevel: 30 }) },
  ],
};

describe('the smooth surface', () => {
  const surface = surfaceOf(spec);
  const half = (x: number) => surface.outlines[1].outer(x);
  const size = (x: number) => ({ half: half(x), thickness: surface.thickness(x) });
  // The soft sections before it are parted where the bevelled one has its edge.
  const edge = edgeShare(spec.sections[2]!, half(1200));
  const sections = spec.sections.map((each, i) => sectionOf(each, size(each.x), i < 2 ? edge : undefined));

  // Each line from section to section is a monotone cubic (held against d3-shape by itself), constant beyond them.
  test('runs from section to section on monotone cubics, and is scaled by outline and thickness', () => {
    for (const v of [0, 0.3, 0.99, 1, 1.5, 2, 2.2, 2.9, 3])
      for (const x of [0, 40, 299, 300, 301, 555, 799.9, 800, 1111, 1200, 1350, 1499])
        for (const side of [0, 1] as const) {
          const curve = (part: 'across' | 'up') =>
            monotone([300, 800, 1200], sections.map((section) => section[part](v)))(x); // prettier-ignore
          const y = (side ? 1 : -1) * half(x) * curve('across');
          const z = surface.bottom(x) + surface.thickness(x) * curve('up');
          const [px, py, pz] = pointOn(surface, v, side, x);
          expect(px).toBe(x);
          expect(py, `${v} ${x}`).toBeCloseTo(y, 9);
          expect(pz, `${v} ${x}`).toBeCloseTo(z, 9);
        }
  });

  test('is the same all along where one section was given, and between two where two were', () => {
    const one = surfaceOf({ ...spec, sections: [spec.sections[1]!] });
    const alone = sectionOf(
      spec.sections[1]!,
      { half: one.outlines[1].outer(800), thickness: one.thickness(800) },
      undefined,
    );
    for (const x of [10, 800, 1490])
      expect(pointOn(one, 1.4, 1, x)[1]).toBeCloseTo(one.outlines[1].outer(x) * alone.across(1.4), 9);
    const two = surfaceOf({ ...spec, sections: spec.sections.slice(0, 2) });
    const soft = spec.sections.slice(0, 2).map((each) => sectionOf(each, size(each.x), undefined));
    // A monotone cubic of two values is straight between them.
    const share = (x: number) => Math.min(1, Math.max(0, (x - 300) / 500));
    for (const x of [10, 400, 700, 1000]) {
      const across = soft[0]!.across(2.4) + share(x) * (soft[1]!.across(2.4) - soft[0]!.across(2.4));
      expect(pointOn(two, 2.4, 1, x)[1], `${x}`).toBeCloseTo(half(x) * across, 9);
    }
  });

  test('lies on the centreline exactly at keel and deck', () => {
    for (const x of [0, 333, 900, 1500]) for (const v of [0, 3]) expect(pointOn(surface, v, 0, x)[1]).toBe(0);
  });

  test('has its stations where something was measured, once each, and where a notch begins', () => {
    expect(surface.stations).toEqual([0, 200, 300, 600, 700, 800, 1200, 1300, 1500]);
    const notched = { ...spec, right: outline(240, { kind: 'swallow', half: 90, depth: 110 }) };
    expect(surfaceOf(notched).stations).toContain(1390);
    const left = { ...outline(200), points: [{ x: 50, half: 90 }, { x: 1450, half: 60 }] }; // prettier-ignore
    const uneven = surfaceOf({ ...spec, left });
    expect(uneven.stations).toEqual([0, 50, 200, 300, 600, 700, 800, 1200, 1300, 1450, 1500]);
    expect(uneven.outlines[0].outer(50)).toBeCloseTo(90, 6);
    expect(uneven.outlines[1].outer(200)).toBeCloseTo(168, 6);
  });

  test('a soft section is parted where the nearest one with an edge is', () => {
    const bevelled = (x: number, bevel: number) => ({ x, ...numbers({ bevel, apex: 0.2 }) });
    const soft = { x: 700, ...numbers({}) };
    const across = (sections: BoardSpec['sections']) => {
      const made = surfaceOf({ ...spec, sections });
      return pointOn(made, 1, 1, 700)[1] / half(700);
    };
    const near = across([{ x: 100, ...numbers({}) }, bevelled(300, 60), soft]);
    expect(near).toBeGreaterThan(1 - 60 / half(300));
    expect(near).toBeLessThan(1 - 60 / half(300) + 0.02);
    const after = across([soft, bevelled(900, 90)]);
    expect(after).toBeGreaterThan(1 - 90 / half(900));
    expect(after).toBeLessThan(1 - 90 / half(900) + 0.02);
    expect(across([soft])).toBeGreaterThan(0.85);
    expect(across([soft])).toBeLessThan(0.87);
  });
});

describe('an outline', () => {
  // x and half-width are monotone cubics (held by itself) over the chain of chords.
  test('is the curve over the length of its chords, by a fine search', () => {
    for (const [nose, tail] of [
      [{ kind: 'round' }, { kind: 'round' }],
      [{ kind: 'pointed' }, { kind: 'pin' }],
      [
        { kind: 'square', half: 80 },
        { kind: 'square', half: 70 },
      ],
    ] as const) {
      const points = [150, 700, 1200].map((x, i) => ({ x, half: [140, 230, 160][i]! }));
      const made = outlineOf({ nose, tail, points: [...points, { x: 0, half: 9 }, { x: 1500, half: 9 }] }, 1500);
      const ends = [nose.kind === 'square' ? 80 : 0, tail.kind === 'square' ? 70 : 0];
      const chain = [{ x: 0, half: ends[0]! }, ...points, { x: 1500, half: ends[1]! }];
      const along = [0];
      chain.slice(1).forEach((p, i) => along.push(along[i]! + Math.hypot(p.x - chain[i]!.x, p.half - chain[i]!.half)));
      const x = monotone(along, chain.map((p) => p.x), {
        ...(nose.kind === 'round' && { first: 0 }),
        ...(tail.kind === 'round' && { last: 0 }),
      }); // prettier-ignore
      const half = monotone(along, chain.map((p) => p.half)); // prettier-ignore
      const total = along.at(-1)!;
      for (let i = 0; i <= 500; i++) {
        const u = (total * i) / 500;
        // Where it stands up at a tip, a hair of x is much of the half-width.
        const isSteep = x(u) < 1 || x(u) > 1499;
        expect(Math.abs(made.outer(x(u)) - half(u)), `${u}`).toBeLessThan(isSteep ? 0.02 : 1e-5);
      }
      expect([made.outer(-5), made.outer(0), made.outer(1500), made.outer(1600)].map((y) => y.toFixed(4))).toEqual(
        [ends[0]!, ends[0]!, ends[1]!, ends[1]!].map((y) => y.toFixed(4)),
      );
      expect([made.notchAt, made.inner(1499)]).toEqual([1500, 0]);
    }
  });

  test('has the corner of a squash tail drawn in by a quarter circle', () => {
    const tail = (kind: 'square' | 'squash') =>
      outlineOf(outline(240, kind === 'square' ? { kind, half: 120 } : { kind, half: 120, corner: 40 }), 1500);
    for (const past of [-10, 0, 5, 25, 39, 40]) {
      const cut = past > 0 ? 40 - Math.sqrt(40 ** 2 - past ** 2) : 0;
      const x = 1460 + past;
      expect(tail('squash').outer(x), `${past}`).toBeCloseTo(tail('square').outer(x) - cut, 9);
    }
    expect(outlineOf(outline(240, { kind: 'squash', half: 20, corner: 40 }), 1500).outer(1500)).toBe(0);
    expect(outlineOf(outline(240, { kind: 'squash', half: 20, corner: 0 }), 1500).outer(1500)).toBeCloseTo(20, 6);
  });

  test('has a notch of two straight sides', () => {
    const { inner, notchAt } = outlineOf(outline(240, { kind: 'swallow', half: 120, depth: 60 }), 1500);
    expect(notchAt).toBe(1440);
    expect([1400, 1440, 1455, 1500].map(inner)).toEqual([0, 0, 30, 120]);
  });
});

test('a notch draws out what lies within it to where the section meets its side, on bottom and deck', () => {
  // A half-section of seven points, its apex the fourth: y, z.
  const section = [[0, 0], [40, 2], [80, 10], [100, 30], [70, 44], [20, 49], [0, 50]]; // prettier-ignore
  for (const sign of [-1, 1])
    for (const [inner, bottom, deck] of [
      [
        0,
        [
          [0, 0],
          [40, 2],
          [80, 10],
        ],
        [
          [0, 50],
          [20, 49],
          [70, 44],
        ],
      ],
      [
        30,
        [
          [30, 1.5],
          [40, 2],
          [80, 10],
        ],
        [
          [30, 48],
          [30, 48],
          [70, 44],
        ],
      ],
      [
        60,
        [
          [60, 6],
          [60, 6],
          [80, 10],
        ],
        [
          [60, 45],
          [60, 45],
          [70, 44],
        ],
      ],
      [
        90,
        [
          [90, 20],
          [90, 20],
          [90, 20],
        ],
        [
          [90, 34 + 2 / 3],
          [90, 34 + 2 / 3],
          [90, 34 + 2 / 3],
        ],
      ],
    ] as [number, number[][], number[][]][]) {
      // prettier-ignore
      const points = Float64Array.from([[9, 9], ...section].flatMap(([y, z]) => [7, sign * y!, z!]));
      cutNotch(points, 1, 7, 3, inner);
      const at = (i: number) => [...points.subarray(3 * i, 3 * i + 3)];
      [[9, 9], ...bottom, section[3]!, ...[...deck].reverse()].forEach(([y, z], i) => {
        expect(at(i)[1], `${inner} ${i}`).toBeCloseTo(sign * y!, 9);
        expect(at(i)[2], `${inner} ${i}`).toBeCloseTo(z!, 9);
      });
    }
});

describe('a surface drawn through what was measured', () => {
  const drawn = surfaceBy({ length: 2000, half: () => 200, thickness: 60 });

  // Shepard (1968): Σ by / d² over Σ 1 / d², the drawing one more datum of 0 at a distance of 600 mm.
  test('is raised by inverse squares of distance, deck and bottom each by its own, and between them in proportion', () => {
    const surface = corrected(drawn, [
      { part: 'deck', x: 500, y: 20, by: 3 },
      { part: 'deck', x: 900, y: -100, by: -1 },
      { part: 'bottom', x: 700, y: 0, by: 2 },
    ]);
    const at = (data: number[][], x: number, y: number) => {
      const weights = data.map(([dx, dy]) => 1 / ((x - dx!) ** 2 + (y - dy!) ** 2));
      const above = data.reduce((sum, [, , by], i) => sum + by! * weights[i]!, 0);
      return above / (1 / 600 ** 2 + weights.reduce((sum, each) => sum + each, 0));
    };
    for (const [x, y] of [[510, 25], [800, 0], [1900, 190], [0, 0]] as const) {
      const deck = at([[500, 20, 3], [900, -100, -1]], x, y);
      const bottom = at([[700, 0, 2]], x, y);
      for (const up of [-0.2, 0, 0.25, 1, 1.3]) {
        const share = Math.min(1, Math.max(0, up));
        expect(surface.raised!(x, y, up), `${x} ${up}`).toBeCloseTo(bottom + share * (deck - bottom), 9);
      }
    } // prettier-ignore
    expect(surface.raised!(500, 20, 1)).toBe(3);
    expect(surface.raised!(700, 0, 0)).toBe(2);
    expect(surface.stations).toEqual([0, 500, 700, 900, 2000]);
    expect(pointOn(surface, 3, 1, 500)[2]).toBeCloseTo(60 + surface.raised!(500, 0, 1), 9);
  });

  test('has its rails moved where they were measured, each side by its own, and its tips where they were', () => {
    const surface = corrected(drawn, [
      { part: 'rail', side: 1, x: 800, by: 4 },
      { part: 'rail', side: 1, x: 800, by: 2 },
      { part: 'rail', side: 0, x: 600, by: -5 },
      { part: 'rail', side: 0, x: 0, by: 9 },
      { part: 'rail', side: 0, x: 2000, by: 9 },
      { part: 'rail', side: 0, x: 2100, by: 9 },
    ]);
    const [left, right] = surface.outlines;
    expect([right.outer(800), left.outer(600)]).toEqual([203, 195]);
    for (const each of [left, right]) expect([each.outer(0), each.outer(2000)]).toEqual([200, 200]);
    const [lefts, rights] = [monotone([0, 600, 2000], [0, -5, 0]), monotone([0, 800, 2000], [0, 3, 0])];
    for (const x of [100, 700, 1500]) {
      expect(left.outer(x)).toBeCloseTo(200 + lefts(x), 9);
      expect(right.outer(x)).toBeCloseTo(200 + rights(x), 9);
    }
    expect(surface.stations).toEqual([0, 600, 800, 2000]);
    expect(surface.raised!(800, 0, 1)).toBe(0);
  });

  test('is no narrower than a notch, and as drawn where nothing was', () => {
    const notched = surfaceBy({ notchAt: 900, inner: (x) => Math.max(0, x - 900) });
    const { outlines } = corrected(notched, [{ part: 'rail', side: 1, x: 950, by: -80 }]);
    expect([outlines[1].outer(950), outlines[1].inner(950)]).toEqual([50, 50]);
    expect(corrected(drawn, [])).toBe(drawn);
  });
});
