import { existsSync, readFileSync } from 'node:fs';
import { sayJobFinding } from '../../src/job/finding.js';
import { readJob, type ReadJob } from '../../src/job/whole/read.js';

const root = new URL('../../', import.meta.url);

export const textOf = (path: string): string => readFileSync(new URL(path, root), 'utf8');

/** A file beside the samples, as the command line gives it. */
export const besideSamples = (name: string): string | undefined => {
  const url = new URL(`samples/${name}`, root);
  return existsSync(url) ? readFileSync(url, 'utf8') : undefined;
};

/** Reads `text` as job.yaml, tables taken from the samples. */
export const readText = (text: string): ReadJob => readJob(text, 'job.yaml', besideSamples);

/** What is said about `text`, one line a finding. */
export const saidAbout = (text: string): string[] => readText(text).findings.map(sayJobFinding);
