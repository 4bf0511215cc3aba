import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { PATCHES } from '../../src/board/mesh.js';
import { MET } from '../../src/chamber/carve.js';
import { planOf } from '../../src/plan.js';
import { thinWalls } from '../../src/proof/thinWalls.js';
import { kernel } from '../oracle/kernel.js';
import { sampleJob, SAMPLES } from '../samples.js';
import { disagreements } from './against.js';

let k: ManifoldToplevel;
beforeAll(async () => {
  k = await kernel();
});

describe.each(SAMPLES)('%s', (name) => {
  const plan = planOf(sampleJob(name));

  test('every wall agrees with an independent kernel (manifold-3d, minGap) to 0.1 mm, and none is below what was asked', () => {
    expect(plan.chambers.length).toBeGreaterThan(20);
    expect(disagreements(plan, k)).toEqual([]);
  });

  test('every chamber has grown until some wall is just met', () => {
    for (const chamber of plan.chambers) {
      expect(
        Math.min(...PATCHES.map((patch) => chamber.wall[patch] - plan.asked[patch])),
        chamber.id,
      ).toBeLessThanOrEqual(MET);
    }
  });

  test('the finished plan stands in a second proof from its published chambers alone', () => {
    const { chambers, layup, trees, board, asked } = plan;
    expect(thinWalls(chambers, layup.rows, trees, board.mesh.chordError, asked)).toEqual([]);
    // And the second proof can fail: with more asked than is there, every chamber is named.
    const more = { deck: asked.deck + 1, bottom: asked.bottom + 1, rail: asked.rail + 1 };
    const named = new Set(
      thinWalls(chambers, layup.rows, trees, board.mesh.chordError, more).map((wall) => wall.chamber),
    );
    expect(named.size).toBe(chambers.length);
  });

  test('no web is thinner than asked, and every chamber has its own block of its own size', () => {
    for (const web of plan.webs)
      expect(web.to - web.from, web.between.join()).toBeGreaterThanOrEqual(plan.job.chambers.web - 1e-6);
    expect(plan.blocks.map((block) => block.id)).toEqual(plan.chambers.map((chamber) => chamber.id));
    expect(new Set(plan.blocks.map((block) => block.id)).size).toBe(plan.blocks.length);
  });

  test('planning again over the plan before gives the same as planning afresh', () => {
    const wider = { ...plan.job, chambers: { ...plan.job.chambers, web: plan.job.chambers.web + 5 } };
    expect(planOf(wider, plan).chambers).toEqual(planOf(wider).chambers);
  });
});

// Facts of the trade, for a board of this description: common practice, no source.
test('the six-stringer rescue board has the chambers of its kind, weighs and loses what such boards do', () => {
  const plan = planOf(sampleJob('tarn-rescue'));
  const { board, chambers, weights } = plan;
  const inches = (mm: number) => mm / 25.4;
  expect(inches(board.length)).toBeCloseTo(136, 1);
  expect(inches(board.width)).toBeCloseTo(22.5, 1);
  expect(inches(board.thickness)).toBeLessThan(4);
  expect(inches(board.thickness)).toBeGreaterThan(3.75);
  expect(chambers.length).toBeGreaterThanOrEqual(80);
  expect(chambers.length).toBeLessThanOrEqual(120);
  const pounds = (stage: string) => weights.stages.find((each) => each.stage === stage)!.weight / 0.45359237;
  expect(pounds('shaped')).toBeGreaterThanOrEqual(36);
  expect(pounds('shaped')).toBeLessThanOrEqual(44);
  expect(pounds('shaped') - pounds('filled')).toBeGreaterThanOrEqual(10);
  expect(pounds('shaped') - pounds('filled')).toBeLessThanOrEqual(16);
});
