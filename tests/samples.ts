import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Job } from '../src/job/job.js';
import { readJob } from '../src/job/whole/read.js';

export const SAMPLES = ['tarn-rescue', 'mere-prone', 'fell-short'] as const;

/** A sample's job; throws what is wrong with it. */
export function sampleJob(name: (typeof SAMPLES)[number]): Job {
  const file = resolve('samples', `${name}.yaml`);
  const { job, findings } = readJob(readFileSync(file, 'utf8'), file, (beside) =>
    readFileSync(resolve('samples', beside), 'utf8'),
  );
  if (!job) throw new Error(findings.map((f) => `${f.where.path}: ${f.what}`).join('\n'));
  return job;
}
