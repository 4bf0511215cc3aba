import { readFileSync } from 'node:fs';
import type { Job } from '../../src/job/job.js';
import { readJob } from '../../src/job/whole/read.js';

/** The sample whose joints are flared, as it comes. */
export function flared(): Job {
  const { job, findings } = readJob(readFileSync('samples/fell-short.yaml', 'utf8'), 'fell-short.yaml', (name) =>
    readFileSync(`samples/${name}`, 'utf8'),
  );
  if (!job) throw new Error(findings.map(({ what }) => what).join('\n'));
  return job;
}
