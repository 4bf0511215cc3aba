import { describe, expect, test } from 'vitest';
import { cutAt, heightsAt, wallsHere } from '../../../src/bench/picture/cut.js';
import { sectionAt } from '../../../src/bench/picture/section.js';
import { faceEdges } from '../../../src/bench/picture/faceEdge.js';
import { planOf } from '../../../src/plan.js';
import { jobOf, sample } from '../read.js';

const straight = { id: '', on: 'in', piece: '', joint: '', origin: [0, 10], along: [1, 0], inward: [0, 1] } as const;
const box = {
  profile: [
    [100, 20],
    [200, 20],
    [200, 50],
    [100, 50],
  ],
  depth: [0, 30],
} as const;

describe('a chamber in a cross-section', () => {
  test('is as deep and as high as it is routed', () => {
    expect(cutAt(box, straight, 150)).toEqual([
      [10, 20],
      [40, 20],
      [40, 50],
      [10, 50],
    ]);
  });

  test('is not there before its beginning and behind its end', () => {
    expect(cutAt(box, straight, 99)).toEqual([]);
    expect(cutAt(box, straight, 201)).toEqual([]);
  });

  test('is cut askew where its face is flared', () => {
    // A face turned by 30°: the plane x = 150 crosses depths t at s = (150 − t·inwardX) / cos 30°, and y = s·sin 30° +
    // t·cos 30°.
    const [sin, cos] = [0.5, Math.sqrt(3) / 2];
    const flared = { ...straight, origin: [0, 0], along: [cos, sin], inward: [-sin, cos] } as const;
    const cut = cutAt(box, flared, 150);
    const ys = cut.map(([y]) => y);
    const y = (t: number) => ((150 + t * sin) / cos) * sin + t * cos;
    expect(Math.min(...ys)).toBeCloseTo(y(0), 9);
    expect(Math.max(...ys)).toBeCloseTo(y(30) > 0 && (150 + 30 * sin) / cos <= 200 ? y(30) : NaN, 9);
  });

  test('of a slanting profile has the height it has there', () => {
    expect(
      heightsAt(
        [
          [0, 0],
          [100, 0],
          [100, 50],
          [0, 30],
        ],
        50,
      ),
    ).toEqual([0, 40]);
  });
});

test('a wall dimensioned in a cross-section is never thinner than the one that was proved', () => {
  // Within a plane the way to the surface is at least as long as in space. The grid is straight between its rows, so a
  // chord may cut 0.05 mm.
  const CHORD = 0.06;
  for (const name of ['tarn-rescue.yaml', 'fell-short.yaml']) {
    const plan = planOf(jobOf(sample(name)));
    const rows = new Map(plan.layup.rows.map((row) => [row.id, row]));
    let looked = 0;
    for (const chamber of plan.chambers) {
      const s = chamber.profile.map(([each]) => each);
      const face = rows.get(chamber.row)!.face;
      const x = face.origin[0] + ((Math.min(...s) + Math.max(...s)) / 2) * face.along[0];
      const cut = cutAt(chamber, face, x);
      if (cut.length === 0) continue;
      const walls = wallsHere(cut, sectionAt(plan.board.grid, x));
      for (const wall of ['deck', 'bottom'] as const) {
        if (!walls[wall]) continue;
        looked++;
        expect(walls[wall].size).toBeGreaterThan(chamber.wall[wall] - CHORD);
      }
    }
    expect(looked).toBeGreaterThan(50);
  }
});

test('a face on the centreline ends at the measured bottom and deck', () => {
  const job = jobOf(sample('mere-prone.yaml'));
  const { board, layup } = planOf(job);
  const joint = { ...layup.joints[0]!, at: 0, slope: 0 };
  const edges = faceEdges(board.grid, { ...straight, origin: [0, 0] }, joint);
  for (const { x, bottom, thickness } of job.board.profile.slice(1, -1)) {
    const edge = edges.find(({ s }) => Math.abs(s - x) < 1e-6)!;
    expect(edge.bottom).toBeCloseTo(bottom, 6);
    expect(edge.deck).toBeCloseTo(bottom + thickness, 6);
  }
});
