import { describe, expect, test } from 'vitest';
import type { Board } from '../../src/board/board.js';
import type { Chamber } from '../../src/chamber/chamber.js';
import type { Layup } from '../../src/layup/layup.js';
import { modulusOf, shearModulusOf } from '../../src/weigh/modulus.js';
import { stiffnessOf } from '../../src/weigh/stiffness.js';
import { gridBy, surfaceBy } from '../board/formulas.js';

/** A plank 200 mm wide of one wood without glass whose deck and bottom rise and fall from row to row, mm. */
const LENGTH = 1600;
const rows = [0, 100, 350, 700, 900, 1250, 1600];
const low = [9, 5, 2, 0, 3, 4, 8];
const thick = [30, 60, 44, 52, 37, 58, 30];
const wood = { name: 'own', density: 400, source: '' };
const fill = { name: 'own foam', density: 16, source: '' };
const E = modulusOf(wood);
const at = (values: readonly number[]) => (x: number) => values[rows.indexOf(x)]!;
const surface = {
  ...surfaceBy({ length: LENGTH, stations: rows, bottom: at(low) }),
  thickness: (x: number) => at(thick)(x),
};
const board = {
  length: LENGTH,
  grid: { ...gridBy(surface, rows, [0, 0.5, 1, 2, 2.5, 3]), same: new Uint32Array(0), chordError: 0 },
} as unknown as Board;
const joint = { id: 'JR1', side: 'R', number: 1, kind: 'dotted', at: 20, slope: 0 } as const;
/** Leans toward the tail as it goes into the piece. */
const [c, s] = [Math.cos(0.2), Math.sin(0.2)];
const face = { id: 'F', origin: [0, 20], along: [c, -s], inward: [s, c] };
const members = [
  { material: wood, right: joint },
  { material: wood, left: joint },
];
const row = { id: 'R1', face: { ...face, along: [1, 0], inward: [0, 1] }, members: [members[1]], end: 'rail' };
const layup = { joints: [joint], members, pieces: [], rows: [row] } as unknown as Layup;
const glass = { deck: [], bottom: [], lap: 0, resin: 1, sealer: 0, hotCoat: 0, hotCoatCloth: 0 };
const job = (pitch: number) => ({ glass, fill, chambers: { pitch } }) as unknown as Parameters<typeof stiffnessOf>[3];

/** ∫ dA, ∫ z dA, ∫ z² dA of a rectangle, exact. */
const rectangle = (width: number, z0: number, z1: number) => [
  width * (z1 - z0),
  (width * (z1 ** 2 - z0 ** 2)) / 2,
  (width * (z1 ** 3 - z0 ** 3)) / 3,
];
/** The section at `x`: its moments change evenly from one row to the next. */
function sectionAt(x: number): number[] {
  const i = rows.findIndex((to, k) => k > 0 && x < to) - 1;
  const share = (x - rows[i]!) / (rows[i + 1]! - rows[i]!);
  const [a, b] = [i, i + 1].map((k) => rectangle(200, low[k]!, low[k]! + thick[k]!));
  return a!.map((value, k) => value + share * (b![k]! - value));
}
const bending = ([area, first, second]: readonly number[]) => ({
  axis: first! / area!,
  stiffness: E * (second! - first! ** 2 / area!),
});

const chamber = (over: Partial<Chamber>) =>
  ({
    id: 'R1-01',
    row: 'R1',
    profile: [
      [500, 10],
      [800, 10],
      [800, 40],
      [500, 30],
    ],
    depth: [0, 60],
    ...over,
  }) as Chamber;

describe('a plank that is not alike from nose to tail', () => {
  const { places, weakest, sag, unevenness } = stiffnessOf(board, layup, [], job(300));

  test('is looked at from an eighth of its length to an eighth before its end, a few to a web', () => {
    expect([places[0]!.x, places.at(-1)!.x]).toEqual([200, 1400]);
    const steps = places.slice(1).map(({ x }, i) => x - places[i]!.x);
    expect(Math.max(...steps)).toBeLessThanOrEqual(5 + 1e-9);
    expect(Math.min(...steps)).toBeGreaterThan(4.9);
  });

  // E (∫ z² − (∫ z)² / A) about the neutral axis (Gere, "Mechanics of Materials"); strain M c / EI.
  test('is as stiff, and strained as much, as its section there', () => {
    for (const { x, stiffness, share, shear, strain } of places) {
      const [area] = sectionAt(x);
      const exact = bending(sectionAt(x));
      expect(stiffness / exact.stiffness, `${x}`).toBeCloseTo(1, 9);
      expect(share).toBe(1);
      expect(shear / (area! * shearModulusOf(wood))).toBeCloseTo(1, 9);
      const i = rows.findIndex((to) => x < to) - 1;
      const far = Math.max(low[i]! + thick[i]! - exact.axis, exact.axis - low[i]!);
      expect(strain / ((500 * Math.min(x - 200, 1400 - x) * far) / exact.stiffness || 1), `${x}`).toBeCloseTo(
        strain === 0 ? 0 : 1,
        9,
      );
    }
    expect(weakest.strain).toBe(Math.max(...places.map(({ strain }) => strain)));
    expect(unevenness).toBe(0);
  });

  // Unit load: ∫ M m / EI + V v / AG between the rests, summed by the trapezoid rule over fine steps.
  test('sags by the unit-load integral', () => {
    let sum = 0;
    const steps = 20000;
    for (let i = 0; i < steps; i++) {
      const x = 200 + ((i + 0.5) * 1200) / steps;
      const half = Math.min(x - 200, 1400 - x) / 2;
      const section = sectionAt(x);
      sum +=
        ((1000 * half * half) / bending(section).stiffness + 250 / (section[0]! * shearModulusOf(wood))) *
        (1200 / steps);
    }
    expect(sag / sum).toBeCloseTo(1, 3);
  });
});

describe('a chamber in it', () => {
  test('takes the rectangle of its depth between its edges and puts its block there, as far as it reaches', () => {
    const { places } = stiffnessOf(board, layup, [chamber({})], job(300));
    for (const { x, stiffness, share, shear } of places) {
      const solid = sectionAt(x);
      const inside = x > 500 && x < 800;
      const top = 30 + (10 * (x - 500)) / 300;
      const left = (modulusOf(fill) - E) / E;
      const taken = inside ? rectangle(60 * left, 10, top) : [0, 0, 0];
      const routed = bending(solid.map((value, k) => value + taken[k]!));
      if (Math.abs(x - 500) < 1e-6 || Math.abs(x - 800) < 1e-6) continue;
      expect(stiffness / routed.stiffness, `${x}`).toBeCloseTo(1, 9);
      expect(share).toBeCloseTo(routed.stiffness / bending(solid).stiffness, 9);
      const core = shearModulusOf(wood) * solid[0]!;
      const block = inside ? 60 * (top - 10) * (shearModulusOf(fill) - shearModulusOf(wood)) : 0;
      expect(shear / (core + block)).toBeCloseTo(1, 9);
    }
  });

  test('goes no deeper than its members, and lies where its slanted face has it', () => {
    const slope = -s / c;
    const held = { ...members[1]!, left: { ...joint, slope }, right: { ...joint, at: 20 + 40 / c, slope } };
    const slanted = { ...row, face, members: [held] };
    const made = stiffnessOf(board, { ...layup, rows: [slanted] } as unknown as Layup, [chamber({})], job(300));
    for (const { x, stiffness } of made.places) {
      // Half way into the chamber, 30 mm behind its face.
      const along = (x - 30 * s) / c;
      if (Math.abs(along - 500) < 1 || Math.abs(along - 800) < 1) continue;
      const inside = along > 500 && along < 800;
      const top = 30 + (10 * (along - 500)) / 300;
      const taken = inside ? rectangle((40 / c) * ((modulusOf(fill) - E) / E), 10, top) : [0, 0, 0];
      const routed = bending(sectionAt(x).map((value, k) => value + taken[k]!));
      expect(stiffness / routed.stiffness, `${x}`).toBeCloseTo(1, 9);
    }
  });

  test('makes it as uneven as the share changes within a pitch, on the average', () => {
    for (const pitch of [50, 300, 9000]) {
      const { places, unevenness } = stiffnessOf(board, layup, [chamber({})], job(pitch));
      const steps = Math.min(places.length - 1, Math.round(pitch / 5));
      const changes: number[] = [];
      for (let i = 0; i + steps < places.length; i++) {
        const shares = places.filter((_, k) => k >= i && k <= i + steps).map(({ share }) => share);
        changes.push(Math.max(...shares) - Math.min(...shares));
      }
      expect(unevenness).toBeCloseTo(changes.reduce((sum, each) => sum + each, 0) / changes.length, 12);
      expect(unevenness).toBeGreaterThan(0);
    }
  });
});
