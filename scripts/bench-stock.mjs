// What the stock costs: how the board with six stringers lies in a moulded blank, and its lumber list. Run by:
// node scripts/bench-stock.mjs. The blank is the board's own shape, larger.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));
const from = async (file) => (await runnerImport(`${root}src/${file}`, { configFile: false, root })).module;
const { readJob } = await from('job/whole/read.ts');
const { boardOf } = await from('board/board.ts');
const { layupOf } = await from('layup/layupOf.ts');
const { sawnStrips } = await from('stock/sawn.ts');
const { fittingOf } = await from('stock/fit.ts');
const { profilesOf } = await from('stock/lumber/profile.ts');
const { lumberList } = await from('stock/lumber/lumberList.ts');

const name = 'tarn-rescue.yaml';
const beside = (file) => readFileSync(`${root}samples/${file}`, 'utf8');
const { job } = readJob(beside(name), name, beside);
const spec = job.board;
const stretch = (spec.length + 60) / spec.length;
const blank = boardOf(
  {
    ...spec,
    length: spec.length + 60,
    profile: spec.profile.map(({ x, bottom, thickness }) => ({
      x: x * stretch,
      bottom: 0.9 * bottom,
      thickness: thickness + 24,
    })),
    right: { ...spec.right, points: spec.right.points.map(({ x, half }) => ({ x: x * stretch, half: half + 6 })) },
    sections: spec.sections.map((section) => ({ ...section, x: section.x * stretch })),
  },
  [],
  0.2,
);
const board = boardOf(spec);
const layup = layupOf(job.glueUp, board.length);
const milling = { above: 4, below: 4, ends: 25, kerf: 3, planing: 1.5, scarf: 12 };
const woods = [...new Set(layup.members.map(({ material }) => material))];
const planks = woods.flatMap((material) =>
  [
    [200, 27],
    [300, 32],
    [250, 52],
  ].map(([width, thickness], i) => ({ material, length: 3700 + 300 * i, width, thickness, price: 30 + 20 * i })),
);

function timed(what, times, run) {
  const clock = [];
  const used = [];
  for (let i = 0; i < times; i++) {
    const began = performance.now();
    const before = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(before);
    clock.push(performance.now() - began);
    used.push((user + system) / 1000);
  }
  const median = (all) => {
    const sorted = all.sort((a, b) => a - b);
    return sorted[Math.floor(times / 2)].toFixed(1).padStart(8);
  };
  console.log(`${what.padEnd(46)} ${median(clock)} ms by the clock, ${median(used)} ms of the processor`);
}

timed('fit of the board in its blank', 25, () => {
  const fitting = fittingOf(board, layup, blank, sawnStrips(layup, 3), 0, [1]);
  fitting.best(Uint32Array.from(fitting.skin.side.keys()));
});
timed('lumber list of its stringers', 9, () =>
  lumberList(
    profilesOf(board, layup, milling, ({ kind }) => kind === 'stringer'),
    planks,
    milling,
  ),
);
