// Draws the README's pictures anew from the samples, as papers and page are today: sheets of the PDFs by pdftoppm, the
// page by a browser. Run by: npm run --silent build && node scripts/pictures.mjs
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, devices } from 'playwright-core';
import { startBenchServer } from '../dist/src/open/server.js';

const root = fileURLToPath(new URL('../', import.meta.url));
const pictures = join(root, 'samples', 'pictures');
const work = mkdtempSync(join(tmpdir(), 'pictures-'));
const DPI = 75;
const DAY = '2026-05-01';

/** The first page of a job's papers that says all these words, as a picture. */
function pageOf(job, kind, words, name) {
  const folder = join(work, name);
  const file = join(root, 'samples', `${job}.yaml`);
  const command = [join(root, 'dist/src/cli/main.js'), 'papers', file, '--only', kind, '--date', DAY, '-o', folder];
  // A job with something to measure again ends with 1, and is printed.
  const { status } = spawnSync(process.execPath, command, { stdio: 'ignore' });
  if (status > 1) throw new Error(`${job}: the papers ${kind} are not made`);
  const pdf = join(folder, 'papers.pdf');
  const pages = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' }).split('\f');
  const index = pages.findIndex((text) => words.every((word) => text.includes(word)));
  if (index < 0) throw new Error(`${name}: no page says ${words.join(', ')}`);
  const at = `${index + 1}`;
  execFileSync('pdftoppm', ['-r', `${DPI}`, '-f', at, '-l', at, '-singlefile', '-png', pdf, join(pictures, name)]);
}

pageOf('tarn-rescue', 'face-R1', ['R1-04', 'L1-04', 'row R1 / L1'], 'face-R1');
pageOf('tarn-rescue', 'plan', ['Plan, part 1 of'], 'plan');
pageOf('tarn-rescue', 'sections', ['60 in from the nose'], 'section');
pageOf('tarn-rescue', 'cutting', ['Cut sheet 1'], 'cut-sheet');
pageOf('beck-guard', 'stock', ['What comes off the deck, part 1'], 'blank');

const server = await startBenchServer({
  job: join(root, 'samples', 'tarn-rescue.yaml'),
  pageFolder: join(root, 'dist', 'page', 'bench'),
  port: 0,
  failed: console.error,
});
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
for (const [name, context] of [
  ['bench', { viewport: { width: 1280, height: 1010 } }],
  ['bench-phone', { ...devices['iPhone 13'], deviceScaleFactor: 1, viewport: { width: 390, height: 844 } }],
]) {
  const page = await browser.newPage(context);
  await page.goto(server.link);
  await page.waitForSelector('[data-chamber]');
  // What takes longer to find stands as dots until then.
  await page.getByText('…', { exact: true }).first().waitFor({ state: 'detached' });
  await page.screenshot({ path: join(pictures, `${name}.png`) });
  await page.close();
}
await browser.close();
await server.close();
rmSync(work, { recursive: true });
