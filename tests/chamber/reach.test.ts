import { expect, test } from 'vitest';
import { planOf } from '../../src/plan.js';
import { sampleJob } from '../samples.js';

const job = sampleJob('mere-prone');
const withCutter = (cutterLength: number) => planOf({ ...job, routing: { ...job.routing, cutterLength } });

test('chambers that the rail ends go no deeper than the cutter reaches, and the cutter that would do is named', () => {
  const reach = 80 - job.routing.guideStock;
  const plan = withCutter(80);
  const blind = plan.layup.rows.filter(({ end }) => end !== 'face').map(({ id }) => id);
  const depths = plan.chambers.filter(({ row }) => blind.includes(row)).map(({ depth }) => depth[1]);
  expect(Math.max(...depths)).toBe(reach);
  const short = plan.notes.filter(({ why }) => why === 'cut-short');
  expect(short.map(({ where }) => where)).toEqual(['L2', 'R2']);

  // With the cutter it asks for, no chamber is cut short and the deepest takes it to its end.
  const needs = Math.max(...short.map(({ needs = 0 }) => needs));
  const longer = withCutter(needs);
  expect(longer.notes.filter(({ why }) => why === 'cut-short')).toEqual([]);
  expect(Math.max(...longer.chambers.map(({ depth }) => depth[1]))).toBeCloseTo(needs - job.routing.guideStock, 6);
});
