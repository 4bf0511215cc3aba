import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../src/plan.js';
import { milledVolume } from '../../src/stock/lumber/milledVolume.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { readText } from '../job/readSample.js';

describe('what a blank weighs as it is glued up', () => {
  // Closed form: a bar of 2000 × 100 × 10 mm between 50 and 60 mm from the centreline, from 0 along.
  it('has each stringer as it is milled', () => {
    const joint = (at: number) => ({ at, slope: 0 });
    const outline = [
      [0, 0],
      [2000, 0],
      [2000, 100],
      [0, 100],
    ] as const;
    const member = { left: joint(50), right: joint(60) };
    const { amount, x, xx, yy } = milledVolume({ member, outline, thickness: 10 } as never);
    expect(amount).toBeCloseTo(2, 9);
    expect(x / amount).toBeCloseTo(1000, 6);
    expect(xx / amount).toBeCloseTo(2000 ** 2 / 3, 3);
    expect(yy / amount).toBeCloseTo(55 ** 2 + 100 / 12, 6);
  });

  // Reference: the moulded blank in manifold-3d, less five kerfs; foam and wood by the densities of the
  // job's materials; 150 g/m² of glue in the bonded joints, from memory.
  it('is the foam of the blank without its kerfs, the stringers, and the glue between them', async () => {
    const plan = planOf(readText(readFileSync('samples/beck-guard.yaml', 'utf8')).job!);
    const { moulded, strips, sawdust } = plan.stock!.blank!;
    const foam = solidOfMesh(await kernel(), moulded.mesh);
    const whole = foam.volume() / 1e6;
    const kerfs = strips.slice(1).map((strip, i) => [strips[i]!.right!.at, strip.left!.at] as const);
    let kerf = 0;
    for (const [from, to] of kerfs)
      kerf += foam.trimByPlane([0, 1, 0], from).trimByPlane([0, -1, 0], -to).volume() / 1e6;
    expect(sawdust).toBeCloseTo(kerf, 1);
    const density = (name: string) =>
      plan.layup.members.find(({ material }) => material.name === name)!.material.density;
    const wood = plan.stock!.profiles.reduce((sum, profile) => {
      let area = 0;
      profile.outline.forEach(([x, z], i) => {
        const [nx, nz] = profile.outline[(i + 1) % profile.outline.length]!;
        area += (x * nz - nx * z) / 2;
      });
      return sum + ((area * profile.thickness) / 1e6) * density(profile.member.material.name);
    }, 0);
    const glue = plan.bare.bondedJoints.amount * 150;
    const expected = ((whole - kerf) * density('pu-blank') + wood + glue) / 1000;
    const stage = plan.weights.stages.find(({ stage }) => stage === 'blank')!;
    expect(stage.foreseen.weight).toBeCloseTo(expected, 1);
    const shaped = plan.weights.stages.find((each) => each.stage === 'shaped')!;
    expect(plan.weights.shapedOff).toBeCloseTo(stage.weight - shaped.weight, 9);
  });
});
