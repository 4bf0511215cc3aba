// What weighing costs: what weights add to a plan, a search for a target, and the comparison of layouts, on the board
// with six stringers. Run by: node scripts/bench-weights.mjs [job]. Each figure is given by the clock and by the
// processor's own time, which other work does not stretch.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));
const from = async (file) => (await runnerImport(`${root}src/${file}`, { configFile: false, root })).module;
const { readJob } = await from('job/whole/read.ts');
const { planOf } = await from('plan.ts');
const { weightsOf } = await from('weigh/weights.ts');
const { steer } = await from('steer/steer.ts');
const { compareStagger } = await from('steer/stagger.ts');

const name = process.argv[2] ?? 'tarn-rescue.yaml';
const beside = (file) => readFileSync(`${root}samples/${file}`, 'utf8');
const { job, findings } = readJob(beside(name), name, beside);
if (!job) throw new Error(findings.map(({ what }) => what).join('\n'));

function timed(what, times, run) {
  const clock = [];
  const processor = [];
  for (let i = 0; i < times; i++) {
    const used = process.cpuUsage();
    const began = performance.now();
    run();
    clock.push(performance.now() - began);
    const { user, system } = process.cpuUsage(used);
    processor.push((user + system) / 1000);
  }
  const median = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)].toFixed(1);
  console.log(
    `${what.padEnd(46)} ${median(clock).padStart(8)} ms by the clock ${median(processor).padStart(8)} ms of processor`,
  );
}

const plan = planOf(job);
timed('plan, all of it', 5, () => planOf(job));
timed('plan on the same board', 5, () => planOf(job, plan));
timed('of it, weights', 51, () => weightsOf(plan.bare, plan.layup, plan.chambers, plan.blocks, job));
if (job.target) {
  let steps = 0;
  timed('search for the target', 3, () => {
    const { met, reached } = steer(plan, job, job.target, (done) => (steps = done));
    console.log(`  ${met ? 'met' : 'missed'}: ${reached.toFixed(3)}, steps ${steps}`);
  });
}
timed('stiffness, staggered and not', 3, () => compareStagger(plan));
