import { describe, expect, test } from 'vitest';
import { closingOf } from '../../src/book/closing.js';
import { planOf } from '../../src/plan.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { sampleJob } from '../samples.js';

const k = await kernel();
const plan = planOf(sampleJob('tarn-rescue'));
const { goes, checks } = closingOf(plan);

describe('gluing back', () => {
  test('closes every joint that was opened once, from the centre outward', () => {
    const dotted = plan.layup.joints.filter(({ kind }) => kind === 'dotted');
    expect(goes.flatMap(({ joints }) => joints).sort()).toEqual(dotted.map(({ id }) => id).sort());
    const out = goes.map(({ joints }) => {
      const { at, slope } = dotted.find(({ id }) => id === joints[0])!;
      return Math.abs(at + (slope * plan.board.length) / 2);
    });
    expect(out).toEqual([...out].sort((a, b) => a - b));
  });

  test('brings two pieces together at every joint, and uses all pieces', () => {
    for (const { joints, pieces } of goes) expect(pieces.length).toBeGreaterThanOrEqual(joints.length + 1);
    expect(new Set(goes.flatMap(({ pieces }) => pieces)).size).toBe(plan.layup.pieces.length);
  });

  test('checks the width and the rocker that a slice of the solid has in manifold-3d', () => {
    const solid = solidOfMesh(k, plan.board.mesh);
    expect(checks.length).toBeGreaterThan(5);
    for (const { x, width, bottom } of checks) {
      // Turned so that the length stands up: x of the slice is −z of the board.
      const section = solid.rotate([0, -90, 0]).slice(x);
      const { min, max } = section.bounds();
      expect(width).toBeCloseTo(max[1] - min[1], 1);
      const keel = section.intersect(k.CrossSection.square([4000, 0.2], true)).bounds();
      expect(bottom).toBeCloseTo(-keel.max[0], 1);
    }
  });

  test('has clamps no further apart than asked along each go', () => {
    for (const { clamps } of goes) {
      const along = [...clamps].sort((a, b) => a - b);
      const gaps = along.slice(1).map((x, i) => x - along[i]!);
      expect(Math.max(...gaps)).toBeLessThanOrEqual(plan.job.blocks.glue.clampSpacing + 1e-6);
    }
  });

  test('of a board whose joints are all bonded is nothing', () => {
    const members = plan.job.glueUp.right.map((member) => ({ ...member, joint: 'bonded' as const }));
    const bonded = planOf({ ...plan.job, glueUp: { ...plan.job.glueUp, centreJoint: 'bonded', right: members } });
    expect(closingOf(bonded).goes).toEqual([]);
  });
});
