// How fast the page answers: the time from a slider's movement to the new picture, over a drag of five seconds on the
// board with six stringers; the longest frame of another such drag; the first view after load; and how much is loaded,
// compressed. Run by: node scripts/bench-page.mjs [job]
/* global requestAnimationFrame -- what page.evaluate runs, runs in the browser */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { build, runnerImport } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));
const job = process.argv[2] ?? 'tarn-rescue.yaml';
const seconds = 5;
const work = mkdtempSync(join(tmpdir(), 'bench-page-'));
cpSync(join(root, 'samples'), join(work, 'jobs'), { recursive: true });
const pageFolder = join(work, 'page');
await build({
  configFile: join(root, 'vite.config.ts'),
  mode: 'bench',
  logLevel: 'error',
  build: { outDir: pageFolder },
});
const { module: open } = await runnerImport(join(root, 'src/open/server.ts'), { configFile: false, root });
const server = await open.startBenchServer({
  job: join(work, 'jobs', job),
  pageFolder,
  port: 0,
  failed: console.error,
});

const flags =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: flags.split(' ') });
const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
const loaded = new Set();
page.on('response', (response) => loaded.add(new URL(response.url()).pathname));
// A browser just started is busy with itself for a while.
await page.waitForTimeout(8000);
await page.goto(server.link);
await page.waitForSelector('[data-chamber]');
const firstView = await page.evaluate(() => {
  const [{ loadEventEnd }] = performance.getEntriesByType('navigation');
  return { sinceAsked: performance.now(), sinceLoad: performance.now() - loadEventEnd };
});
await page.waitForTimeout(4000);

const slider = page.locator('[data-slider="web"]');
const box = await slider.boundingBox();

/** Drags the slider to and fro. */
async function drag() {
  await page.mouse.move(box.x + box.width * 0.2, box.y + box.height / 2);
  await page.mouse.down();
  const begin = Date.now();
  for (let i = 0; Date.now() - begin < seconds * 1000; i++) {
    const share = 0.2 + 0.15 * (1 - Math.cos(i / 25));
    await page.mouse.move(box.x + box.width * share, box.y + box.height / 2);
    await page.waitForTimeout(16);
  }
  await page.mouse.up();
  await page.waitForTimeout(1000);
}

await drag();
const times = await page.evaluate(() =>
  performance.getEntriesByName('change to picture').map(({ duration }) => duration),
);
// Counting frames makes the browser draw every one of them, so they are counted in a drag of their own.
const frames = page.evaluate(
  (span) =>
    new Promise((resolve) => {
      const times = [];
      const end = performance.now() + span;
      const next = (now) => {
        times.push(now);
        if (now < end) requestAnimationFrame(next);
        else resolve(times.slice(1).map((time, i) => time - times[i]));
      };
      requestAnimationFrame(next);
    }),
  seconds * 1000,
);
await drag();
const gaps = (await frames).sort((a, b) => a - b);
times.sort((a, b) => a - b);
const at = (list, share) =>
  list.length === 0 ? NaN : list[Math.min(list.length - 1, Math.floor(share * list.length))];
const assets = readdirSync(join(pageFolder, 'assets')).filter((name) => loaded.has(`/bench/assets/${name}`));
const compressed = assets.reduce(
  (sum, name) => sum + gzipSync(readFileSync(join(pageFolder, 'assets', name))).length,
  0,
);
console.log(
  JSON.stringify(
    {
      job,
      pictures: times.length,
      changeToPicture: { median: at(times, 0.5), p95: at(times, 0.95), worst: times.at(-1) },
      frame: { median: at(gaps, 0.5), p95: at(gaps, 0.95), longest: gaps.at(-1) },
      firstView,
      compressedKb: compressed / 1000,
    },
    (_, value) => (typeof value === 'number' ? Math.round(value * 10) / 10 : value),
    2,
  ),
);
await browser.close();
await server.close();
rmSync(work, { recursive: true, force: true });
process.exit(0);
