// Makes samples/scan/shore-watch.ply anew: an invented board as a hand scanner would give it, lying askew, with noise,
// a crumb and one hole in its deck. Run by: node scripts/scan-sample.mjs (after `npm run build`).
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { after, movedAll, shiftedBy, turnAbout } from '../dist/src/scan/place/rigid.js';
import { meshBytes } from '../dist/src/scan/write/meshFile.js';

const [LENGTH, HALF_WIDTH, THICKNESS] = [2800, 282, 104];
const [ALONG, AROUND] = [170, 64];
const NOISE = 0.25;
const HOLE = { x: 1750, y: -120, radius: 40 };

let state = 20262;
const random = () => (state = (state * 48271) % 2147483647) / 2147483647;
const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());

/** Half of the width, half of the thickness and height of the middle at a share of the length, mm. */
function shape(s) {
  const end = Math.abs(2 * s - 1);
  const nose = Math.max(0, 1 - 2 * s) ** 2.2;
  const tail = Math.max(0, 2 * s - 1) ** 2;
  return {
    half: HALF_WIDTH * (1 - end ** 2.3) ** 0.62 * (1 + 0.08 * (s - 0.5)),
    thick: (THICKNESS / 2) * (1 - end ** 3.2) ** 0.75,
    middle: 118 * nose + 42 * tail,
  };
}

/** A superellipse, fuller below than above. */
const power = (value, exponent) => Math.sign(value) * Math.abs(value) ** exponent;

const positions = [];
const triangles = [];
for (let i = 0; i <= ALONG; i++)
  for (let k = 0; k < AROUND; k++) {
    const s = (1 - Math.cos((Math.PI * i) / ALONG)) / 2;
    const { half, thick, middle } = shape(s);
    const angle = (2 * Math.PI * k) / AROUND;
    const isBelow = Math.sin(angle) < 0;
    const off = i === 0 || i === ALONG ? 0 : NOISE;
    positions.push(
      LENGTH * s + off * normal(),
      half * power(Math.cos(angle), isBelow ? 0.55 : 0.72) + off * normal(),
      middle + thick * power(Math.sin(angle), isBelow ? 0.55 : 0.8) + off * normal(),
    );
  }
const isInHole = (at) =>
  Math.hypot(positions[3 * at] - HOLE.x, positions[3 * at + 1] - HOLE.y) < HOLE.radius &&
  positions[3 * at + 2] > shape(HOLE.x / LENGTH).middle;
for (let i = 0; i < ALONG; i++)
  for (let k = 0; k < AROUND; k++) {
    const next = (k + 1) % AROUND;
    const [a, b, c, d] = [i * AROUND + k, i * AROUND + next, (i + 1) * AROUND + next, (i + 1) * AROUND + k];
    for (const corners of [
      [a, b, c],
      [a, c, d],
    ])
      if (!corners.some(isInHole)) triangles.push(...corners);
  }
// A crumb of what it lay on.
const first = positions.length / 3;
positions.push(900, 60, -90, 930, 62, -95, 905, 85, -92, 908, 64, -70);
triangles.push(...[0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3].map((i) => first + i));

const askew = after(
  shiftedBy(412, -1033, 655),
  after(turnAbout(2, 2.6), after(turnAbout(1, -0.11), turnAbout(0, 0.32))),
);
const rounded = movedAll(askew, Float64Array.from(positions)).map((value) => Math.round(1000 * value) / 1000);
const bytes = meshBytes(
  { positions: rounded, triangles: Uint32Array.from(triangles) },
  '.ply',
  'shore watch, invented',
);
writeFileSync(fileURLToPath(new URL('../samples/scan/shore-watch.ply', import.meta.url)), bytes);
