import { expect, test } from 'vitest';
import { unchangedAs } from '../../src/job/unchanged.js';
import { sampleJob } from '../samples.js';

const before = sampleJob('tarn-rescue');
const again = sampleJob('tarn-rescue');

test('a job that says the same is the earlier one itself', () => {
  expect(again).not.toBe(before);
  expect(unchangedAs(before, again)).toBe(before);
});

test('parts that say the same are the earlier objects, whatever else has changed; what has changed is the new one', () => {
  const dots = { ...again.dots, spacing: again.dots.spacing + 1 };
  const job = unchangedAs(before, { ...again, dots });
  expect(job).toEqual({ ...again, dots });
  expect(job.dots).toBe(dots);
  expect(job.board).toBe(before.board);
  expect(job.glueUp).toBe(before.glueUp);
  expect(job.keepOuts).toBe(before.keepOuts);
});

test('a part that is taken out is gone, one that is new is there, and the last figure counts', () => {
  expect(Object.keys(unchangedAs({ ...before, routed: [] }, again))).not.toContain('routed');
  expect(unchangedAs(before, { ...again, routed: [] }).routed).toEqual([]);
  const chambers = { ...again.chambers, web: again.chambers.web + 1e-9 };
  expect(unchangedAs(before, { ...again, chambers }).chambers).toBe(chambers);
});
