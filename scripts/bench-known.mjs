import { pathToFileURL } from 'node:url';
import { cutSheets } from '../dist/src/block/cut/cutSheets.js';
import { seeded } from '../dist/src/block/nest/seeded.js';
import { knownJob } from './known-jobs.mjs';

/** What one job may take. */
const SECONDS = 5;
/** How many of the jobs are to come out on as many sheets as they were cut from. */
const SHARE = 0.9;

/**
 * Jobs cut from a known number of sheets: on how many of them so many are found again. Job `n` is made from seed `n`.
 * Run after `npm run build`.
 */
export function benchKnown(few, jobs = 60, print = console.log) {
  const kind = few ? 'few lengths' : 'free lengths';
  const times = [];
  let reached = 0;
  for (let seed = 1; seed <= jobs; seed++) {
    const job = knownJob(seeded(1_000_003 * (few ? 1 : 2) + seed), few);
    const start = performance.now();
    const plan = cutSheets(job.parts, [job.sheet], job.saw, { seconds: SECONDS });
    times.push((performance.now() - start) / 1000);
    if (plan.leftOut.length > 0) throw new Error(`seed ${seed}: ${plan.leftOut.length} blocks are left out`);
    if (plan.sheets.length <= job.sheets) reached++;
    else {
      const { length, width } = job.sheet;
      const fill = (100 * job.fill).toFixed(1);
      print(
        `${kind}, seed ${seed}: ${job.parts.length} blocks that fill ${fill} % of ${job.sheets} of ${length} × ${width}: ${plan.sheets.length} sheets`,
      );
    }
  }
  times.sort((a, b) => a - b);
  const [median, slowest] = [times[jobs >> 1], times[jobs - 1]].map((seconds) => seconds.toFixed(2));
  print(`${kind}: as few sheets as known in ${reached} of ${jobs}; median ${median} s, slowest ${slowest} s`);
  return reached >= SHARE * jobs;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  if (![true, false].map((few) => benchKnown(few)).every(Boolean)) process.exitCode = 1;
}
