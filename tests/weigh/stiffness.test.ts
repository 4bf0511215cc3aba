import { layupOf } from '../../src/layup/layupOf.js';
import { describe, expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import type { Chamber } from '../../src/chamber/chamber.js';
import type { Job } from '../../src/job/job.js';
import { planOf } from '../../src/plan.js';
import { modulusOf } from '../../src/weigh/modulus.js';
import { compareStagger } from '../../src/steer/stagger.js';
import { stiffnessOf } from '../../src/weigh/stiffness.js';
import { tarn } from './tarn.js';

/** A plank, as near as a board comes to it: straight, square ends, full sides, of one wood, without glass. */
const [LENGTH, WIDTH, THICK] = [2000, 400, 50];
const wood = tarn().glueUp.right.find((m) => m.kind === 'stringer')!.material;
const plank: Job = {
  ...tarn(),
  board: {
    length: LENGTH,
    right: {
      nose: { kind: 'square', half: WIDTH / 2 },
      tail: { kind: 'square', half: WIDTH / 2 },
      points: [{ x: LENGTH / 2, half: WIDTH / 2 }],
    },
    profile: [0, LENGTH].map((x) => ({ x, bottom: 0, thickness: THICK })),
    sections: [{ x: 0, kind: 'numbers', apex: 0.5, above: 0.995, below: 0.995, crown: 0, bottom: { kind: 'flat' } }],
  },
  glueUp: {
    centreJoint: 'dotted',
    right: [{ kind: 'strip', material: wood, routing: 'open', joint: 'dotted' }],
  },
  glass: { deck: [], bottom: [], lap: 0, resin: 1, sealer: 0, hotCoat: 0, hotCoatCloth: 0 },
};
const board = boardOf(plank.board);
const layup = layupOf(plank.glueUp, LENGTH);
const E = modulusOf(wood);
/**
 * Wood sheared along the grain: a sixteenth of E for softwoods (Wood Handbook, table of elastic ratios; from memory).
 */
const G = E / 16;

describe('a plank', () => {
  const solid = stiffnessOf(board, layup, [], plank);

  test('is as stiff as a rectangle: E b h³ / 12', () => {
    for (const { stiffness } of solid.places) expect(stiffness / ((E * WIDTH * THICK ** 3) / 12)).toBeCloseTo(1, 2);
  });

  // Beam on two rests, load in the middle: F L³ / 48 EI (any text on strength of materials), and what shear of a core
  // adds, F L / 4 A G (Allen 1969, Zenkert 1997, from memory).
  test('sags by F L³ / 48 EI + F L / 4 A G between its rests', () => {
    const span = 0.75 * LENGTH;
    const bending = (1000 * span ** 3) / (48 * ((E * WIDTH * THICK ** 3) / 12));
    const shear = (1000 * span) / (4 * WIDTH * THICK * G);
    expect(solid.sag / (bending + shear)).toBeCloseTo(1, 2);
  });

  test('of foam sags as one with G between E / 2.6 and E / 2.2 does (Zenkert 1997, from memory)', () => {
    const foam = { name: 'eps-15', density: 14.4, source: '' };
    const right = [{ kind: 'strip', material: foam, routing: 'open', joint: 'dotted' }] as const;
    const soft = layupOf({ ...plank.glueUp, right }, LENGTH);
    const { sag } = stiffnessOf(board, soft, [], plank);
    const span = 0.75 * LENGTH;
    // 2.5 MPa at 1 % (ASTM D6817).
    const bending = (1000 * span ** 3) / (48 * ((2.5 * WIDTH * THICK ** 3) / 12));
    const withShear = (over: number) => bending + (1000 * span * over) / (4 * WIDTH * THICK * 2.5);
    expect(sag).toBeGreaterThan(withShear(2.2));
    expect(sag).toBeLessThan(withShear(2.6) * 1.005);
  });

  test('is weakest in the middle, where its skin is strained by M h / 2 EI', () => {
    expect(Math.abs(solid.weakest.x - LENGTH / 2)).toBeLessThan(5);
    const strain = (((1000 * 0.75 * LENGTH) / 4) * (THICK / 2)) / ((E * WIDTH * THICK ** 3) / 12);
    expect(solid.weakest.strain / strain).toBeCloseTo(1, 2);
  });
});

test('a chamber weakens a plank by the rectangle that it takes out, and its block gives next to nothing back', () => {
  const row = layup.rows.find(({ side }) => side === 'R')!;
  const [low, high, deep] = [12, 38, 120];
  const chamber = {
    id: 'R1-01',
    row: row.id,
    place: 1,
    contour: [],
    profile: [
      [900, low],
      [1100, low],
      [1100, high],
      [900, high],
    ],
    depth: [0, deep],
    volume: 0,
    wall: { deck: 12, bottom: 12, rail: 80 },
    at: { deck: [0, 0, 0], bottom: [0, 0, 0], rail: [0, 0, 0] },
  } satisfies Chamber;
  const routed = stiffnessOf(board, layup, [chamber], plank);
  const there = routed.places.find(({ x }) => Math.abs(x - 1000) < 5)!;
  const away = routed.places.find(({ x }) => Math.abs(x - 600) < 5)!;
  const left = 1 - (deep * (high - low) ** 3) / (WIDTH * THICK ** 3);
  expect(there.share).toBeCloseTo(left, 2);
  expect(away.share).toBe(1);
  expect(routed.unevenness).toBeGreaterThan(0);
  expect(routed.unevenness).toBeLessThan(1 - there.share);
});

test('staggered chambers leave the board more even from nose to tail than webs in line', () => {
  const job = tarn();
  const plan = planOf(job);
  const { asPlanned, inLine } = compareStagger(plan);
  expect(asPlanned.unevenness).toBeLessThan(0.9 * inLine.unevenness);
  const least = (s: typeof inLine) => Math.min(...s.places.map(({ stiffness }) => stiffness));
  expect(least(inLine)).toBeGreaterThan(0);
  for (const { share } of asPlanned.places) {
    expect(share).toBeLessThanOrEqual(1 + 1e-9);
    expect(share).toBeGreaterThan(0.3);
  }
});
