// From the bytes of a scan to a proved plan: time and memory by how many triangles it has, with the noise of a hand
// scanner. The board is of closed form, made here.
import { planOf } from '../dist/src/plan.js';
import { readJob } from '../dist/src/job/whole/read.js';
import { proofOf } from '../dist/src/proof/proof.js';

const [HALF_LENGTH, HALF_WIDTH, HALF_THICKNESS] = [1450, 270, 55];
const NOISE = 0.1;
const TURN = 0.7;

/** An ellipsoid with a rocker, turned aside, as binary STL of about so many triangles. */
function scan(count) {
  const around = Math.round(Math.sqrt(count / 8));
  const along = Math.round(count / (2 * around));
  let state = 1;
  const random = () => (state = (state * 48271) % 2147483647) / 2147483647 - 0.5;
  const points = [];
  for (let i = 0; i <= along; i++)
    for (let k = 0; k < around; k++) {
      const a = (Math.PI * i) / along;
      const b = (2 * Math.PI * k) / around;
      const isTip = i === 0 || i === along;
      const off = isTip ? 0 : NOISE;
      const x = -HALF_LENGTH * Math.cos(a) + off * random();
      const y = isTip ? 0 : HALF_WIDTH * Math.sin(a) * Math.cos(b) + off * random();
      const z =
        (isTip ? 0 : HALF_THICKNESS * Math.sin(a) * Math.sin(b)) + 60e-6 * x * x - 1.2e-8 * x ** 3 + off * random();
      points.push([x * Math.cos(TURN) - y * Math.sin(TURN), x * Math.sin(TURN) + y * Math.cos(TURN), z]);
    }
  const triangles = [];
  for (let i = 0; i < along; i++)
    for (let k = 0; k < around; k++) {
      const next = (k + 1) % around;
      const [p, q, r, s] = [i * around + k, i * around + next, (i + 1) * around + next, (i + 1) * around + k];
      if (i > 0) triangles.push([p, q, r]);
      if (i < along - 1) triangles.push([p, r, s]);
    }
  const tip = (n) => (n < around ? 0 : n >= along * around ? along * around : n);
  const bytes = new Uint8Array(84 + 50 * triangles.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, triangles.length, true);
  triangles.forEach((corners, t) =>
    corners.forEach((corner, c) =>
      points[tip(corner)].forEach((value, axis) => view.setFloat32(96 + 50 * t + 12 * c + 4 * axis, value, true)),
    ),
  );
  return bytes;
}

const JOB = `
job: bench
units: mm
board: {mesh: scan.stl, units: mm}
glueUp:
  centre: {stringer: basswood, thickness: 6, router: solid}
  members:
    - {strip: eps-22, thickness: 90, joint: dotted}
    - {strip: eps-22, joint: dotted}
chambers: {pitch: 220, datum: 260, web: 20, deckSkin: 10, bottomSkin: 9, railWall: 22, tolerance: 1, cutter: 12}
fill: {name: light offcuts, density: 12 kg/m3}
`;

for (const count of [20_000, 200_000, 1_000_000]) {
  const times = [];
  let said = '';
  for (let run = 0; run < 3; run++) {
    const bytes = scan(count);
    globalThis.gc?.();
    const before = process.memoryUsage().rss;
    const begin = performance.now();
    const { job, findings } = readJob(
      JOB,
      'bench.yaml',
      () => undefined,
      undefined,
      () => bytes,
    );
    if (!job) throw new Error(JSON.stringify(findings));
    const read = performance.now();
    const plan = planOf(job);
    const planned = performance.now();
    const proof = proofOf(plan);
    const proved = performance.now();
    times.push([read - begin, planned - read, proved - planned, proved - begin]);
    const grown = (process.memoryUsage().rss - before) / 1e6;
    said = `${plan.chambers.length} chambers, ${proof.thin.length + proof.faults.length} faults, ${Math.round(grown)} MB more`;
  }
  const best = times.reduce((a, b) => (b[3] < a[3] ? b : a)).map((ms) => Math.round(ms));
  console.log(
    `${count} triangles: read and set up ${best[0]} ms, planned ${best[1]} ms, proved ${best[2]} ms, together ${best[3]} ms; ${said}`,
  );
}
