import { pathToFileURL } from 'node:url';
import { MaxRectsPacker } from 'maxrects-packer/dist/maxrects-packer.mjs';
import { cutSheets } from '../dist/src/block/cut/cutSheets.js';
import { seeded } from '../dist/src/block/nest/seeded.js';

/**
 * Cut sheets against a packer that need not cut edge to edge, on random jobs: sheets used, and the area bound.
 * Job `n` is made from seed `n`, so that a line can be looked into again. Run after `npm run build`.
 */
export function benchCut(jobs = 100, print = console.log) {
  const tally = { fewer: 0, equal: 0, oneMore: 0, more: 0, sheets: 0, packed: 0, bound: 0, slowest: 0 };
  for (let seed = 1; seed <= jobs; seed++) {
    const job = randomJob(seed);
    const start = performance.now();
    const plan = cutSheets(job.parts, [job.sheet], job.saw);
    const seconds = (performance.now() - start) / 1000;
    if (plan.leftOut.length > 0) throw new Error(`seed ${seed}: ${plan.leftOut.length} blocks are left out`);
    const sheets = plan.sheets.length;
    const packed = packedBins(job);
    const bound = Math.round(plan.sums.leastSheetArea / (job.sheet.length * job.sheet.width));
    if (sheets < packed) tally.fewer++;
    else if (sheets === packed) tally.equal++;
    else if (sheets === packed + 1) tally.oneMore++;
    else tally.more++;
    tally.sheets += sheets;
    tally.packed += packed;
    tally.bound += bound;
    tally.slowest = Math.max(tally.slowest, seconds);
    if (sheets !== packed || sheets !== bound) {
      const { length, width } = job.sheet;
      print(
        `seed ${seed}: ${job.parts.length} blocks from ${length} × ${width}: ${sheets} sheets, packer ${packed}, area bound ${bound}`,
      );
    }
  }
  const { fewer, equal, oneMore, more } = tally;
  const gap = (100 * (tally.sheets - tally.bound)) / tally.bound;
  print(
    `seeds 1 to ${jobs}: fewer sheets than the packer in ${fewer}, as many in ${equal}, one more in ${oneMore}, several more in ${more}`,
  );
  print(
    `sheets ${tally.sheets}, packer ${tally.packed}, area bound ${tally.bound}: ${gap.toFixed(1)} % above the bound`,
  );
  print(`slowest job ${tally.slowest.toFixed(2)} s`);
  return tally;
}

function packedBins({ parts, sheet, saw }) {
  const options = { smart: false, pot: false, square: false, allowRotation: parts[0].mayTurn };
  const { length, width } = sheet;
  const packer = new MaxRectsPacker(length - 2 * saw.trim, width - 2 * saw.trim, saw.kerf, options);
  packer.addArray(parts.map((part) => ({ width: part.length, height: part.height })));
  return packer.bins.length;
}

/** 20 to 140 blocks: half of the jobs in a few lengths as one guide family gives them, half in lengths of any kind. */
function randomJob(seed) {
  const draw = seeded(seed);
  const whole = (from, to) => from + Math.floor(draw() * (to - from + 1));
  const [length, width] = [
    [2400, 600],
    [1200, 600],
    [1000, 500],
    [1200, 1200],
  ][whole(0, 3)];
  const family = draw() < 0.5 ? Array.from({ length: whole(2, 4) }, () => whole(120, 320)) : undefined;
  const highest = whole(70, 180);
  const mayTurn = draw() < 0.5;
  const parts = Array.from({ length: whole(20, 140) }, (_, i) => ({
    id: `B${i}`,
    foam: 'fill',
    length: family ? family[whole(0, family.length - 1)] : whole(100, 350),
    height: whole(30, highest),
    mayTurn,
  }));
  const saw = { kerf: [0, 1, 3, 4][whole(0, 3)], trim: [0, 5, 10][whole(0, 2)], keep: { length: 200, width: 60 } };
  return { parts, sheet: { id: 'sheet', foam: 'fill', length, width }, saw };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { oneMore, more } = benchCut();
  if (oneMore > 5 || more > 0) process.exitCode = 1;
}
