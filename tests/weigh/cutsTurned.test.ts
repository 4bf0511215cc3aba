import { expect, test } from 'vitest';
import type { Chamber } from '../../src/chamber/chamber.js';
import type { Face, Joint, LaidMember, Layup } from '../../src/layup/layup.js';
import { cutsOf, within } from '../../src/weigh/cuts.js';
import { sumOf } from '../../src/weigh/moments.js';
import { kernel, solidOfChamber } from '../oracle/kernel.js';
import { momentsOfSolid } from './solids.js';

const k = await kernel();
const joint = (at: number, slope: number): Joint => ({ id: 'J', side: 'R', number: 1, kind: 'dotted', at, slope });

/** A row on a face turned by an angle, its members parted by joints that run along it so far behind it. */
function rowOn(angle: number, inwardRight: boolean, behind: readonly number[]) {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const sign = inwardRight ? 1 : -1;
  const face = { id: 'F', origin: [0, 60 * sign], along: [c, s], inward: [-sign * s, sign * c] } as unknown as Face;
  // Through origin + t · inward, along the face: y = y0 + tan(angle) · (x − x0).
  const at = (t: number) => joint(60 * sign + (sign * t) / c, s / c);
  const joints = [0, ...behind].map(at);
  const members = joints.map((near, m) => {
    const far = joints[m + 1];
    const [left, right] = inwardRight ? [near, far] : [far, near];
    return { id: `M${m}`, ...(left && { left }), ...(right && { right }) } as unknown as LaidMember;
  });
  return { face, members };
}
const corners: [number, number][] = [[800, 10], [1000, 10], [1100, 60], [820, 50]]; // prettier-ignore
const chamberTo = (depth: number): Chamber =>
  ({
    id: 'R1-01',
    row: 'R1',
    profile: corners,
    contour: corners.map(([x, y]) => ({ x, y })),
    depth: [0, depth],
  }) as unknown as Chamber;

test.each([
  [0, true],
  [0.3, true],
  [0.3, false],
  [-0.2, false],
])(
  'a chamber on a face turned by %d (rightward %s) has the moments of its prism in manifold-3d',
  (angle, rightward) => {
    const { face, members } = rowOn(angle, rightward, [30, 90]);
    const layup = { rows: [{ id: 'R1', face, members, end: 'rail' }] } as unknown as Layup;
    const [cut] = cutsOf([chamberTo(110)], layup);
    // Each member has what lies between its joints: 0–30, 30–90, 90–110 behind the face.
    const parts = [[0, 30], [30, 90], [90, 110]] as const; // prettier-ignore
    cut!.members.forEach(({ moments }, m) => {
      const solid = momentsOfSolid(solidOfChamber(k, face, corners, parts[m]!));
      for (const key of ['amount', 'x', 'xx', 'yy'] as const)
        // The kernel keeps single-precision corners.
        expect(moments[key] / (solid[key] / 1e6), `${m} ${key}`).toBeCloseTo(1, 4);
    });
    expect(cut!.whole).toEqual(sumOf(cut!.members.map(({ moments }) => moments)));
    // Walls around the profile, and its end: a blind chamber has one.
    const around = corners.reduce((sum, [s, z], i) => {
      const [s2, z2] = corners[(i + 1) % 4]!;
      return sum + Math.hypot(s2 - s, z2 - z);
    }, 0);
    const area = momentsOfSolid(solidOfChamber(k, face, corners, [0, 1])).amount;
    expect((cut!.walls * 1e6) / (around * 110 + area)).toBeCloseTo(1, 5);
  },
);

test('a chamber takes from a member only what lies in it', () => {
  const { face, members } = rowOn(0, true, [30, 90]);
  const layup = { rows: [{ id: 'R1', face, members, end: 'rail' }] } as unknown as Layup;
  const amounts = (depth: number) => cutsOf([chamberTo(depth)], layup)[0]!.members.map(({ moments }) => moments.amount);
  const area = momentsOfSolid(solidOfChamber(k, face, corners, [0, 1])).amount / 1e6;
  const [near, mid, far] = amounts(20);
  expect([near! / area, mid, far].map((each) => Number(each!.toFixed(3)))).toEqual([20, 0, 0]);
  expect(amounts(60).map((each) => Number((each / area).toFixed(3)))).toEqual([30, 30, 0]);
});

test('what two stretches share is a stretch, or nothing where one begins that the other has not reached', () => {
  expect(within([0, 10], [3, 7])).toEqual([3, 7]);
  expect(within([4, 10], [3, 7])).toEqual([4, 7]);
  expect(within([0, 5], [3, 7])).toEqual([3, 5]);
  expect(within([0, 2], [3, 7])).toEqual([3, 3]);
  expect(within([8, 9], [3, 7])).toEqual([8, 8]);
});
