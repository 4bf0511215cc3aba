import { readFileSync } from 'node:fs';
import type { Job } from '../../src/job/job.js';
import { readJob } from '../../src/job/whole/read.js';

const SAMPLES = new URL('../../samples/', import.meta.url);

/** The text of a sample. */
export const sample = (name: string): string => readFileSync(new URL(name, SAMPLES), 'utf8');

/** The job of a text, as if it lay among the samples. */
export function jobOf(text: string): Job {
  const { job, findings } = readJob(text, 'test.yaml', (name) => sample(name));
  if (!job) throw new Error(findings.map(({ what }) => what).join('; '));
  return job;
}
