import { layupOf } from '../../src/layup/layupOf.js';
import { describe, expect, test } from 'vitest';
import type { Member, MemberWithJoint } from '../../src/job/job.js';
import { depthOf, toBoard, toFace } from '../../src/layup/frame.js';

const foam = { name: 'foam', density: 20, source: 'invented' };
const strip = (thickness?: Member['thickness']): Member => ({
  kind: 'strip',
  material: foam,
  routing: 'open',
  ...(thickness !== undefined && { thickness }),
});
const stringer = (thickness: number, routing: 'open' | 'solid'): Member => ({
  kind: 'stringer',
  material: foam,
  routing,
  thickness,
});
const behind = (joint: 'bonded' | 'dotted', member: Member): MemberWithJoint => ({ ...member, joint });

describe('pieces and rows', () => {
  const layup = layupOf(
    {
      centre: strip(100),
      centreJoint: 'bonded',
      right: [
        behind('bonded', stringer(20, 'open')),
        behind('dotted', strip(80)),
        behind('dotted', stringer(25, 'solid')),
        behind('bonded', strip()),
      ],
    },
    3000,
  );

  test('the pieces are what the dotted joints part, named from the centre outward', () => {
    expect(layup.pieces.map((piece) => [piece.id, piece.members.map((m) => m.id).join(' ')])).toEqual([
      ['PL2', 'ML4 ML3'],
      ['PL1', 'ML2'],
      ['PC', 'ML1 MC MR1'],
      ['PR1', 'MR2'],
      ['PR2', 'MR3 MR4'],
    ]);
  });

  test('a centre group is routed right through its stringers; a solid stringer at the face leaves the piece behind it alone', () => {
    expect(layup.rows.map((row) => [row.id, row.end, row.members.map((m) => m.id).join(' ')])).toEqual([
      ['L1', 'face', 'ML2'],
      ['C1', 'face', 'MR1 MC ML1'],
      ['R1', 'face', 'MR2'],
    ]);
  });

  test('neighbouring rows are staggered against each other, and a board with a central row alike on both sides', () => {
    expect(layup.rows.map((row) => row.parity)).toEqual([1, 0, 1]);
  });

  test('a row before a solid member stops at it, and the outermost is blind toward the rail', () => {
    const { rows } = layupOf(
      {
        centreJoint: 'dotted',
        right: [
          behind('dotted', strip(60)),
          behind('bonded', stringer(20, 'solid')),
          behind('bonded', strip(60)),
          behind('dotted', strip()),
        ],
      },
      3000,
    );
    expect(rows.map((row) => [row.id, row.face.id, row.end])).toEqual([
      ['L3', 'FL2-in', 'rail'],
      ['L2', 'FL1-out', 'solid'],
      ['L1', 'FL1-in', 'solid'],
      ['R1', 'FR1-in', 'solid'],
      ['R2', 'FR1-out', 'solid'],
      ['R3', 'FR2-in', 'rail'],
    ]);
  });
});

describe('flared joints', () => {
  const { joints, rows } = layupOf(
    {
      centreJoint: 'dotted',
      right: [
        behind('dotted', strip({ nose: 50, tail: 110 })),
        behind('dotted', stringer(20, 'open')),
        behind('dotted', strip()),
      ],
    },
    2000,
  );

  test('a tapering strip has its two thicknesses across the board at nose and tail', () => {
    const [inner] = joints.filter((joint) => joint.id === 'JR1');
    expect(inner!.at).toBe(50);
    expect(inner!.at + inner!.slope * 2000).toBeCloseTo(110, 9);
  });

  test('the left half is the mirror image of the right, each joint at its own angle', () => {
    for (const { id, at, slope } of joints.filter(({ side }) => side === 'R')) {
      const mirror = joints.find((joint) => joint.id === id.replace('R', 'L'))!;
      expect([mirror.at, mirror.slope]).toEqual([-at, -slope]);
    }
  });

  test('a tapering strip on the centreline gives half of each of its thicknesses to either side', () => {
    const { joints: around } = layupOf(
      {
        centre: strip({ nose: 40, tail: 60 }),
        centreJoint: 'dotted',
        right: [behind('dotted', strip(30)), behind('bonded', strip())],
        left: [behind('bonded', strip({ nose: 10, tail: 10 })), behind('dotted', strip())],
      },
      2000,
    );
    expect(around.map(({ id, kind }) => `${id} ${kind}`)).toEqual([
      'JL2 dotted',
      'JL1 bonded',
      'JR1 dotted',
      'JR2 bonded',
    ]);
    expect(around.map(({ at, slope }) => at + 2000 * slope).map((y) => Number(y.toFixed(6)))).toEqual([
      -40,
      -30,
      30,
      // By hand: 30 mm square to a line that rises by 0.005.
      Number((30 + 30 * Math.hypot(1, 0.005)).toFixed(6)),
    ]);
    expect(around.map(({ at }) => Number(at.toFixed(3)))).toEqual([-30, -20, 20, 50]);
  });

  test('a stringer keeps its thickness square to its joint', () => {
    const [inner, outer] = ['JR1', 'JR2'].map((id) => joints.find((joint) => joint.id === id)!);
    const slope = 60 / 2000;
    // Distance of two parallel lines, |c2 − c1| / √(1 + m²).
    expect((outer!.at - inner!.at) / Math.hypot(1, slope)).toBeCloseTo(20, 9);
    expect(outer!.slope).toBe(inner!.slope);
  });

  test("a point goes into a face's frame and back, and a joint lies where the frame says", () => {
    for (const { face } of rows) {
      const [x, y] = toBoard(face, 700, 30, 15);
      const [s, t] = toFace(face, x, y);
      expect(s).toBeCloseTo(700, 9);
      expect(t).toBeCloseTo(15, 9);
      for (const joint of joints) {
        const { at, slope } = depthOf(face, joint);
        const [jx, jy] = toBoard(face, 700, 0, at + slope * 700);
        expect(jy).toBeCloseTo(joint.at + joint.slope * jx, 9);
      }
    }
  });
});
