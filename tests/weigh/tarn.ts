import { readFileSync } from 'node:fs';
import type { GlassSpec } from '../../src/job/finish.js';
import type { Job } from '../../src/job/job.js';
import { readJob } from '../../src/job/read.js';
import { G_M2_PER_OZ_YD2 } from '../../src/length/areal.js';
import { KG_PER_POUND } from '../../src/length/units.js';

export const pounds = (lb: number) => lb * KG_PER_POUND;
export const inches = (inch: number) => inch * 25.4;

/** One layer of 8 oz a side and a hot coat reinforced with 4 oz. */
export const GLASS: GlassSpec = {
  deck: [8 * G_M2_PER_OZ_YD2],
  bottom: [8 * G_M2_PER_OZ_YD2],
  lap: inches(2),
  resin: 1,
  sealer: 100,
  hotCoat: 225,
  hotCoatCloth: 4 * G_M2_PER_OZ_YD2,
};

/** The main sample, glassed as above, with a thick-based fin in its box and nothing weighed yet. */
export function tarn(): Job {
  const { job, findings } = readJob(
    readFileSync('samples/tarn-rescue.yaml', 'utf8'),
    'tarn-rescue.yaml',
    () => undefined,
  );
  if (!job) throw new Error(findings.map(({ what }) => what).join('\n'));
  const x = job.board.length - inches(18);
  return {
    ...job,
    glass: GLASS,
    fins: [
      {
        name: 'fin',
        x,
        base: inches(10),
        tip: inches(4.5),
        depth: inches(9.5),
        thickness: inches(7 / 8),
        tipThickness: inches(1 / 4),
        density: 1750,
      },
    ],
    fittings: [{ name: 'fin box', x, weight: pounds(0.4) }],
    weighings: [],
  };
}
