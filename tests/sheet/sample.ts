import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readJob } from '../../src/job/whole/read.js';
import { planOf, type Plan } from '../../src/plan.js';

export const SAMPLES = ['tarn-rescue', 'mere-prone', 'fell-short'] as const;

const plans = new Map<string, Plan>();

/** The plan of a sample, made once a test file. */
export function planOfSample(name: (typeof SAMPLES)[number]): Plan {
  let plan = plans.get(name);
  if (!plan) {
    const text = (file: string) =>
      readFileSync(fileURLToPath(new URL(`../../samples/${file}`, import.meta.url)), 'utf8');
    const { job, findings } = readJob(text(`${name}.yaml`), `${name}.yaml`, text);
    if (!job) throw new Error(JSON.stringify(findings));
    plans.set(name, (plan = planOf(job)));
  }
  return plan;
}
