import { describe, expect, test } from 'vitest';
import { goesThrough } from '../../src/chamber/through.js';
import { planOf } from '../../src/plan.js';
import { toBoard } from '../../src/layup/frame.js';
import { cutsOf } from '../../src/weigh/cuts.js';
import { kernel, solidOfChamber } from '../oracle/kernel.js';
import { momentsOfSolid } from './solids.js';
import { flared } from './flared.js';
import { tarn } from './tarn.js';

const k = await kernel();

describe.each([
  ['straight', tarn()],
  ['flared', flared()],
])('the chambers of a board with %s joints, against manifold-3d', (_, job) => {
  const plan = planOf(job);
  const cuts = cutsOf(plan.chambers, plan.layup);
  const rows = new Map(plan.layup.rows.map((row) => [row.id, row]));

  test('take from each member what the kernel finds in both', () => {
    expect(cuts.length).toBeGreaterThan(20);
    plan.chambers.forEach((chamber, i) => {
      const row = rows.get(chamber.row)!;
      const whole = solidOfChamber(k, row.face, chamber.profile, chamber.depth);
      for (const { member, moments } of cuts[i]!.members) {
        let part = whole;
        const { left, right } = member;
        if (left) part = part.trimByPlane([-left.slope, 1, 0], left.at / Math.hypot(1, left.slope));
        if (right) part = part.trimByPlane([right.slope, -1, 0], -right.at / Math.hypot(1, right.slope));
        const { amount, x, xx } = momentsOfSolid(part);
        // The kernel's prism has facets for its eased corners, each a little outside the arc: at most 0.1 % of a
        // chamber. Where a slanted joint runs out through a corner of the chamber, the share at its middle stands for
        // the whole.
        expect(Math.abs(moments.amount - amount / 1e6)).toBeLessThan(0.004 * cuts[i]!.whole.amount + 1e-4);
        if (moments.amount < 0.05) continue;
        expect(Math.abs(moments.x / moments.amount - x / amount)).toBeLessThan(0.6);
        // A slanted joint makes a wedge of a member's share, which swings a little otherwise about its own middle.
        expect(Math.abs(moments.xx / moments.amount - xx / amount)).toBeLessThan(0.005 * (xx / amount));
      }
    });
  });

  test('have walls with the area of the kernel, less their openings', () => {
    plan.chambers.forEach((chamber, i) => {
      const row = rows.get(chamber.row)!;
      // A chamber routed right through a slanted piece sticks out of it at one end; only what lies in the piece has
      // walls.
      const last = row.members.at(-1)!;
      const far = row.face.inward[1] > 0 ? last.right : last.left;
      const sign = row.face.inward[1] > 0 ? 1 : -1;
      const whole = solidOfChamber(k, row.face, chamber.profile, chamber.depth);
      const solid = far
        ? whole.trimByPlane([sign * far.slope, -sign, 0], (-sign * far.at) / Math.hypot(1, far.slope))
        : whole;
      const end = new k.CrossSection([chamber.profile.map(([s, z]): [number, number] => [s, z])]).area();
      const walls = solid.surfaceArea() - (goesThrough(chamber, row) ? 2 : 1) * end;
      expect(Math.abs(cuts[i]!.walls - walls / 1e6)).toBeLessThan(0.02 * cuts[i]!.walls);
    });
  });

  test('lie where their face says', () => {
    plan.chambers.forEach((chamber, i) => {
      const { face } = rows.get(chamber.row)!;
      const s = chamber.profile.map(([each]) => each);
      const [x] = toBoard(face, (Math.min(...s) + Math.max(...s)) / 2, 0, chamber.depth[1] / 2);
      const { whole } = cuts[i]!;
      expect(Math.abs(whole.x / whole.amount - x)).toBeLessThan(20);
    });
  });
});
