import { readFileSync } from 'node:fs';
import type { GlassSpec } from '../../src/job/spec/finish.js';
import type { Job } from '../../src/job/job.js';
import { readJob } from '../../src/job/whole/read.js';
import { KG_PER_POUND } from '../../src/length/units.js';

export const pounds = (lb: number) => lb * KG_PER_POUND;
export const inches = (inch: number) => inch * 25.4;

/**
 * The main sample: one layer of 8 oz a side, a hot coat reinforced with 4 oz, a thick-based fin. Nothing is weighed
 * yet.
 */
export function tarn(): Job & { readonly glass: GlassSpec } {
  const text = readFileSync('samples/tarn-rescue.yaml', 'utf8');
  const { job, findings } = readJob(text, 'tarn-rescue.yaml', () => undefined);
  if (!job?.glass) throw new Error(findings.map(({ what }) => what).join('\n'));
  return { ...job, glass: job.glass, weighings: [] };
}
