// How fast plans and proofs are: medians on each sample, where the time goes, the proof against a solid-geometry kernel
// over the same chambers and the same mesh, ten times the chambers, and the peak of memory. Run by: node
// scripts/bench-plan.mjs (after `npm run build`).
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Module from 'manifold-3d';
import { boardOf } from '../dist/src/board/board.js';
import { chambersIn } from '../dist/src/chamber/chambers.js';
import { readJob } from '../dist/src/job/whole/read.js';
import { layupOf } from '../dist/src/layup/layupOf.js';
import { planOf } from '../dist/src/plan.js';
import { proofOf } from '../dist/src/proof/proof.js';
import { thinWalls } from '../dist/src/proof/thinWalls.js';
import { patchTreesOf } from '../dist/src/wall/patchTree.js';
import { solidOf } from '../dist/src/wall/solid.js';
import { wallsOf } from '../dist/src/wall/walls.js';

const ROUNDS = 15;
/** Rounds before the first that counts: the engine compiles what it has seen often. */
const WARM = 12;
const samples = fileURLToPath(new URL('../samples/', import.meta.url));
const beside = (file) => (existsSync(samples + file) ? readFileSync(samples + file, 'utf8') : undefined);

function jobNamed(name) {
  const { job, findings } = readJob(beside(name), name, beside);
  if (!job) throw new Error(findings.map(({ what }) => what).join('\n'));
  return job;
}

/** Median of some rounds, ms, the first ones not counted. */
function median(run, rounds = ROUNDS) {
  const times = [];
  for (let i = -WARM; i < rounds; i++) {
    const start = performance.now();
    run(i);
    if (i >= 0) times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[times.length >> 1];
}

const ms = (value) => `${value.toFixed(value < 10 ? 2 : 0)} ms`;

for (const name of ['tarn-rescue.yaml', 'mere-prone.yaml', 'fell-short.yaml']) {
  const job = jobNamed(name);
  const plan = planOf(job);
  console.log(`${name}: ${plan.chambers.length} chambers, ${plan.board.mesh.patches.length} triangles`);
  console.log(`  plan with walls                    ${ms(median(() => planOf(job)))}`);
  for (const [what, change] of [
    ['web', (i) => ({ web: job.chambers.web + 1 + (i & 1) })],
    ['deck skin', (i) => ({ deckSkin: job.chambers.deckSkin + 0.5 + (i & 1) })],
    ['pitch', (i) => ({ pitch: job.chambers.pitch + 1 + (i & 1) })],
  ]) {
    let before = plan;
    const again = median((i) => (before = planOf({ ...job, chambers: { ...job.chambers, ...change(i) } }, before)));
    console.log(`  again after changing the ${what.padEnd(10)}${ms(again)}`);
  }
  const { board, layup, trees } = plan;
  console.log(`  of which surface and mesh          ${ms(median(() => boardOf(job.board)))}`);
  console.log(`  of which trees of triangles        ${ms(median(() => patchTreesOf(board.mesh)))}`);
  console.log(`  of which glue-up                   ${ms(median(() => layupOf(job.glueUp, board.length)))}`);
  console.log(`  of which chambers, once, no glue   ${ms(median(() => chambersIn(board, layup, trees, job)))}`);
  const faces = new Map(layup.rows.map((row) => [row.id, row.face]));
  const prove = () => plan.chambers.forEach((c) => wallsOf(solidOf(faces.get(c.row), c.profile, c.depth), trees, 0));
  const ours = median(prove);
  console.log(`  the proof alone                    ${ms(ours)}, ${ms(ours / plan.chambers.length)} a chamber`);
  const { asked } = plan;
  const walls = median(() => thinWalls(plan.chambers, layup.rows, trees, board.mesh.chordError, asked));
  const whole = median(() => proofOf(plan));
  console.log(`  a finished plan proved once more   ${ms(whole)}, ${(whole / walls).toFixed(2)} times its walls alone`);
  if (name === 'tarn-rescue.yaml') await againstKernel(plan, faces, ours);
}
many();

/**
 * The same chambers against the same mesh in manifold-3d: smallest gap to the outside of the board, asked in the
 * direction that is quicker there.
 */
async function againstKernel(plan, faces, ours) {
  const k = await Module();
  k.setup();
  const { mesh } = plan.board;
  const board = new k.Manifold(
    new k.Mesh({ numProp: 3, vertProperties: Float32Array.from(mesh.positions), triVerts: mesh.triangles }),
  );
  const outside = k.Manifold.cube([plan.board.length + 400, 1400, 900])
    .translate([-200, -700, -300])
    .subtract(board);
  outside.status();
  const solids = plan.chambers.map(({ row, profile, depth }) => {
    const { along, inward, origin } = faces.get(row);
    const prism = new k.CrossSection([profile.map((pair) => [...pair])]).extrude(depth[1]);
    return prism.transform([...along, 0, 0, 0, 0, 1, 0, ...inward, 0, 0, ...origin, 0, 1]);
  });
  solids.forEach((solid) => solid.status());
  const theirs = median(() => solids.forEach((solid) => outside.minGap(solid, 60)), 3);
  console.log(`  manifold-3d minGap, the same       ${ms(theirs)}, ${ms(theirs / solids.length)} a chamber`);
  console.log(`  ratio                              ${(theirs / ours).toFixed(0)} times faster`);
}

/** Fine pitch: ten times the chambers on the same board. */
function many() {
  const job = jobNamed('tarn-rescue.yaml');
  const dots = { ...job.dots, may: ['swallow'] };
  const at = (pitch, web) => ({
    ...job,
    dots,
    chambers: { ...job.chambers, pitch, web, smallest: { length: 8, height: 14, depth: 12 }, cutterDiameter: 6 },
  });
  const few = at(job.chambers.pitch, job.chambers.web);
  let fine = at(30, 6);
  for (let pitch = 30; planOf(fine).chambers.length < 1000 && pitch > 16; pitch -= 1) fine = at(pitch, 6);
  const [a, b] = [few, fine].map((each) => ({
    count: planOf(each).chambers.length,
    time: median(() => planOf(each), 7),
  }));
  console.log(
    `fine pitch: ${b.count} chambers in ${ms(b.time)}, ${a.count} in ${ms(a.time)}: ${(b.time / a.time).toFixed(1)} times`,
  );
  console.log(`peak memory of this run: ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`);
}
