import { layupOf } from '../../../src/layup/layupOf.js';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, expect, test } from 'vitest';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { parse } from 'yaml';
import { printLength } from '../../../src/length/length.js';
import { planOf } from '../../../src/plan.js';
import { resultOf } from '../../../src/view/result.js';
import { sayJobFinding } from '../../../src/job/finding.js';
import { readJob } from '../../../src/job/whole/read.js';
import { jobOf, sample } from '../read.js';
import { closeBrowser, opened, settled, type Look, type Opened } from './opened.js';

let now: Opened | undefined;
const open = async (job: string, look?: Look) => (now = await opened(job, look));

afterEach(async () => {
  const was = now;
  now = undefined;
  await was?.close();
  expect(was?.complaints ?? []).toEqual([]);
});
afterAll(closeBrowser);

const samples = readdirSync(new URL('../../../samples/', import.meta.url)).filter((name) => name.endsWith('.yaml'));

test.each(samples)('%s on the page has the same plan as on the command line, figure for figure', async (name) => {
  const { page } = await open(name);
  const result = resultOf(planOf(jobOf(sample(name))));
  expect(await page.locator('[data-chamber]').count()).toBe(result.chambers.length);
  const beside = Object.fromEntries(['fell-short.csv'].map((table) => [table, sample(table)]));
  // The page's own worker, asked as the page asks it.
  const inPage = await page.evaluate(
    ({ written }) => {
      const worker = performance.getEntriesByType('resource').find(({ name: url }) => /worker-[\w-]+\.js$/.test(url))!;
      const asked = new Worker(worker.name, { type: 'module' });
      return new Promise<string>((resolve) => {
        asked.onmessage = ({ data }: MessageEvent<{ shown?: { result: unknown } }>) =>
          data.shown && resolve(JSON.stringify(data.shown.result));
        asked.postMessage({ number: 1, which: 'this', written });
      });
    },
    { written: { name, text: sample(name), beside } },
  );
  expect(differences(JSON.parse(inPage), JSON.parse(JSON.stringify(result)))).toEqual([]);
});

/**
 * Sines and roots may differ in their last bit from one engine to the next (ECMA-262, 21.3.2 leaves them to the
 * implementation); what is more than a billionth, or not a number, is a difference.
 */
const LAST_BITS = 1e-9;

function differences(a: unknown, b: unknown, at = ''): string[] {
  if (typeof a === 'number' && typeof b === 'number') {
    return Math.abs(a - b) <= LAST_BITS * Math.max(1, Math.abs(b)) ? [] : [`${at}: ${a} and ${b}`];
  }
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) {
    return a === b ? [] : [`${at}: ${String(a)} and ${String(b)}`];
  }
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].flatMap((key) =>
    differences((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], `${at}.${key}`),
  );
}

test('a keep-out is added like the last one, taken away again, and the sheets are counted', async () => {
  const { page } = await open('mere-prone.yaml');
  const count = page.locator('[data-count="sheets"]');
  await expect.poll(() => count.textContent()).toMatch(/^[1-9]\d*/);
  await page.locator('details[data-section="keepOuts"] summary').click();
  const groups = page.locator('details[data-section="keepOuts"] fieldset');
  const before = await groups.count();
  await page.locator('[data-add="keepOuts"]').click();
  await expect.poll(() => groups.count()).toBe(before + 1);
  await groups
    .last()
    .getByRole('button', { name: /^Remove/ })
    .click();
  await expect.poll(() => groups.count()).toBe(before);
});

test('a wider web is seen in the chambers, their notes and the saved file, and taken back by one step', async () => {
  const { page, folder } = await open('mere-prone.yaml');
  const before = await page.locator('[data-chamber]').count();
  const web = page.locator('[data-path="chambers.web"]');
  // 300 mm of pitch less 240 mm of web leave less than the smallest chamber: said in the command line's words.
  await web.fill('240');
  await web.press('Enter');
  const mistake = page.locator('.mistakes li').first();
  await mistake.waitFor();
  const [finding] = readJob(
    sample('mere-prone.yaml').replace('web: 30', 'web: 240'),
    'mere-prone.yaml',
    () => undefined,
  ).findings;
  expect(await mistake.textContent()).toBe(sayJobFinding(finding!));
  await web.fill('215');
  await web.press('Enter');
  // So wide a web is doubted, and planned as written.
  await page.waitForFunction(() => !document.querySelector('.mistakes .error'));
  await settled(page);
  const changed = planOf(jobOf(sample('mere-prone.yaml').replace('web: 30', 'web: 215')));
  expect(await page.locator('[data-chamber]').count()).toBe(changed.chambers.length);
  expect(changed.chambers.length).not.toBe(before);
  await page.locator('.notes summary').click();
  await expect.poll(() => page.locator('[data-note]').count()).toBe(changed.notes.length);
  await page.keyboard.press('Control+s');
  await page.getByText('Saved as mere-prone.yaml').waitFor();
  expect(readFileSync(join(folder, 'mere-prone.yaml'), 'utf8')).toBe(
    sample('mere-prone.yaml').replace('web: 30', 'web: 215'),
  );
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await settled(page);
  expect(await web.inputValue()).toBe('30');
  expect(await page.locator('[data-chamber]').count()).toBe(before);
});

test('a thicker rail wall is seen at the chamber whose walls are on show', async () => {
  const { page } = await open('mere-prone.yaml');
  const before = planOf(jobOf(sample('mere-prone.yaml')));
  const after = planOf(jobOf(sample('mere-prone.yaml').replace('railWall: 22', 'railWall: 27')));
  // Of the blind row: one that the thicker wall makes shallower and leaves in its place.
  const { id, wall } = after.chambers.find(({ id, row, depth }) => {
    const was = before.chambers.find((each) => each.id === id);
    return row === 'R2' && was !== undefined && was.depth[1] > depth[1];
  })!;
  await page.locator(`[data-chamber="${id}"]`).click();
  const asked = page.locator('[data-wall="rail"] td').first();
  await asked.filter({ hasText: '23.5 mm' }).waitFor();
  await page.locator('[data-path="chambers.railWall"]').fill('27');
  await page.locator('[data-path="chambers.railWall"]').press('Enter');
  await asked.filter({ hasText: '28.5 mm' }).waitFor();
  const proved = page.locator('[data-wall="rail"] strong');
  expect(await proved.textContent()).toBe(printLength(wall.rail, 'mm'));
  expect(wall.rail).toBeGreaterThanOrEqual(28.5);
});

test('a chamber chosen above is chosen on its face and in the cross-section too', async () => {
  const { page } = await open('tarn-rescue.yaml');
  const { id, row } = planOf(jobOf(sample('tarn-rescue.yaml'))).chambers.find((each) => each.row === 'R2')!;
  await page.locator(`[data-chamber="${id}"]`).click();
  expect(await page.locator(`[data-face-chamber="${id}"]`).getAttribute('class')).toContain('chosen');
  expect(await page.locator(`.rows [aria-pressed=true]`).textContent()).toBe(row);
  await page.locator('.walls caption').filter({ hasText: id }).waitFor();
});

test('nonsense typed into a field is answered there, in the words of the command line', async () => {
  const { page } = await open('tarn-rescue.yaml');
  const chambers = await page.locator('[data-chamber]').count();
  await page.locator('[data-path="chambers.web"]').fill('wide {as a, hand');
  await page.locator('[data-path="chambers.web"]').press('Tab');
  const text = sample('tarn-rescue.yaml').replace('web: 1 in', 'web: "wide {as a, hand"');
  const [finding] = readJob(text, 'tarn-rescue.yaml', () => undefined).findings;
  expect(finding!.where.path).toBe('chambers.web');
  const alert = page.locator('.field.wrong [role=alert]');
  await alert.waitFor();
  expect((await alert.textContent())!.trim()).toBe(`${finding!.what} → ${finding!.remedy}`);
  expect(await page.locator('[data-path="chambers.web"]').getAttribute('aria-invalid')).toBe('true');
  // The last plan that could be made stays on show, and shows that it is not of what is written now.
  expect(await page.locator('[data-chamber]').count()).toBe(chambers);
  await page.waitForSelector('.bench.stale svg.above');
  await page.locator('[data-path="chambers.web"]').fill('1 in');
  await page.locator('[data-path="chambers.web"]').press('Tab');
  await page.waitForSelector('.bench:not(.stale) svg.above');
});

test('a joint dragged by the pointer moves by what it was dragged, in one step', async () => {
  const { page, folder } = await open('tarn-rescue.yaml');
  const job = jobOf(sample('tarn-rescue.yaml'));
  const before = layupOf(job.glueUp, job.board.length).joints.find(({ id }) => id === 'JR4')!.at;
  const handle = (await page.locator('[data-handle="Joint JR4"]').boundingBox())!;
  const above = (await page.locator('svg.above').boundingBox())!;
  const scale = above.width / (job.board.length * 1.04);
  const [x, y] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 4; i++) await page.mouse.move(x, y - i);
  await page.mouse.up();
  await settled(page);
  await page.keyboard.press('Control+s');
  await page.getByText('Saved as tarn-rescue.yaml').waitFor();
  const saved = jobOf(readFileSync(join(folder, 'tarn-rescue.yaml'), 'utf8'));
  const after = layupOf(saved.glueUp, saved.board.length).joints.find(({ id }) => id === 'JR4')!.at;
  // To a sixteenth of an inch, toward the right rail (up on the page).
  expect(Math.abs(after - before - 4 / scale)).toBeLessThan(25.4 / 16 + 0.1);
  await page.keyboard.press('Control+z');
  await settled(page);
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
});

test('everything goes by keyboard alone: chambers, a keep-out, a slider, undo and save', async () => {
  const { page, folder } = await open('mere-prone.yaml');
  const to = async (wanted: string) => {
    for (let i = 0; i < 200; i++) {
      await page.keyboard.press('Tab');
      if (await page.evaluate((selector) => document.activeElement?.matches(selector), wanted)) return;
    }
    throw new Error(`Tab does not reach ${wanted}`);
  };
  await to('.chambers');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  const first = await page.locator('.above .chamber.chosen').getAttribute('data-chamber');
  await page.keyboard.press('ArrowUp');
  const second = await page.locator('.above .chamber.chosen').getAttribute('data-chamber');
  expect(first).toMatch(/^R1-/);
  expect(second).toMatch(/^R2-/);
  await to('[data-handle="leash plug"]');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await to('[data-slider="web"]');
  await page.keyboard.press('ArrowRight');
  await settled(page);
  await page.keyboard.press('Control+s');
  await page.getByText('Saved as mere-prone.yaml').waitFor();
  const saved = parse(readFileSync(join(folder, 'mere-prone.yaml'), 'utf8')) as {
    keepOuts: { fromTail: number }[];
    chambers: { web: number };
  };
  expect(saved.keepOuts[0]!.fromTail).toBe(183);
  expect(saved.chambers.web).toBe(31);
});

test('a file changed on disk is asked about, and neither text is lost', async () => {
  const { page, folder } = await open('mere-prone.yaml');
  const file = join(folder, 'mere-prone.yaml');
  const theirs = sample('mere-prone.yaml').replace('pitch: 300', 'pitch: 320');
  writeFileSync(file, theirs);
  await page.getByRole('button', { name: 'web: one step more' }).click();
  await page.keyboard.press('Control+s');
  const dialog = page.getByRole('dialog');
  await dialog.waitFor();
  expect(readFileSync(file, 'utf8')).toBe(theirs);
  await dialog.getByRole('button', { name: 'Keep both: save mine as' }).click();
  await dialog.waitFor({ state: 'detached' });
  expect(readFileSync(file, 'utf8')).toBe(theirs);
  expect(readFileSync(join(folder, 'mere-prone-mine.yaml'), 'utf8')).toBe(
    sample('mere-prone.yaml').replace('web: 30', 'web: 31'),
  );
});

test('taking the file on disk keeps one’s own text one step back', async () => {
  const { page, folder } = await open('mere-prone.yaml');
  writeFileSync(join(folder, 'mere-prone.yaml'), sample('mere-prone.yaml').replace('pitch: 300', 'pitch: 320'));
  await page.getByRole('button', { name: 'web: one step more' }).click();
  await page.keyboard.press('Control+s');
  await page.getByRole('dialog').getByRole('button', { name: 'Keep the file on disk' }).click();
  await settled(page);
  expect(await page.locator('[data-path="chambers.pitch"]').inputValue()).toBe('320');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await page.locator('[data-path="chambers.pitch"]').inputValue()).toBe('300');
  expect(await page.locator('[data-path="chambers.web"]').inputValue()).toBe('31');
});

test('lengths are shown and taken in the other units by a switch', async () => {
  const { page } = await open('tarn-rescue.yaml');
  await page.getByRole('radio', { name: 'mm' }).check();
  const web = page.locator('[data-path="chambers.web"]');
  expect(await web.inputValue()).toBe('25.4 mm');
  await web.fill('30');
  await web.press('Enter');
  await settled(page);
  expect(await web.inputValue()).toBe('30 mm');
  await page.getByRole('radio', { name: 'in', exact: true }).check();
  // What was typed stays as it was typed: with its unit.
  expect(await web.inputValue()).toBe('30 mm');
});

test('a second job stands beside the first, with walls, weights and blocks of both', async () => {
  const { page } = await open('tarn-rescue.yaml');
  await page.locator('[data-compare]').selectOption('fell-short.yaml');
  const table = page.locator('.compare table');
  await table.waitFor();
  const blocks = [...samples].map((name) => [name, planOf(jobOf(sample(name))).blocks.length] as const);
  const cells = await table
    .getByRole('row', { name: /^blocks/ })
    .getByRole('cell')
    .allTextContents();
  expect(cells.slice(0, 2)).toEqual(
    ['tarn-rescue.yaml', 'fell-short.yaml'].map((name) => String(new Map(blocks).get(name))),
  );
});

test('papers are made from what is on the bench, looked at page by page, and kept as a file', async () => {
  const { page } = await open('fell-short.yaml');
  await page.locator('.papers summary').click();
  const ticked = page.locator('[data-paper-kind]:checked');
  await ticked.first().waitFor();
  while ((await ticked.count()) > 0) await ticked.first().uncheck();
  await page.getByRole('checkbox', { name: 'Story pole' }).check();
  await page.getByRole('checkbox', { name: 'Block labels' }).check();
  await page.locator('[data-make-papers]').click();
  const file = page.locator('[data-papers-file]');
  await file.waitFor();
  const total = Number(await page.locator('[data-papers-pages]').textContent());
  expect(total).toBeGreaterThan(2);
  const picture = page.locator('.papers img');
  expect(await picture.evaluate((img: HTMLImageElement) => img.complete && img.naturalWidth > 100)).toBe(true);
  await page.getByRole('button', { name: 'Next page' }).click();
  expect(await page.locator('[data-papers-page]').textContent()).toBe('2');
  const [download] = await Promise.all([page.waitForEvent('download'), file.click()]);
  expect(download.suggestedFilename()).toBe('fell-short-papers.pdf');
  const bytes = new Uint8Array(readFileSync((await download.path())!));
  const pdf = await getDocument({ data: bytes }).promise;
  expect(pdf.numPages).toBe(total);
});

test('papers of one phase are chosen by its name, ticked, and made with its own page of the build book', async () => {
  const { page } = await open('fell-short.yaml');
  await page.locator('.papers summary').click();
  const phases = page.locator('[data-paper-phase]');
  await phases.locator('option').nth(1).waitFor({ state: 'attached' });
  expect(await phases.locator('option').allTextContents()).toContain('1 Printing and reading, you are here');
  await phases.selectOption({ value: 'open' });
  const group = page.getByRole('group', { name: 'Of this phase, to print' });
  await group.getByRole('checkbox', { name: /^Build book: [12] pages?$/ }).waitFor();
  expect(await group.locator('[data-paper-kind]').count()).toBe(
    await group.locator('[data-paper-kind]:checked').count(),
  );
  await page.getByRole('button', { name: 'Make the papers of this phase' }).click();
  await page.locator('[data-papers-file="papers.pdf"]').waitFor();
  const file = page.locator('[data-papers-file="book.pdf"]');
  const [download] = await Promise.all([page.waitForEvent('download'), file.click()]);
  const pdf = await getDocument({ data: new Uint8Array(readFileSync((await download.path())!)) }).promise;
  const { items } = await (await pdf.getPage(1)).getTextContent();
  expect(items.map((item) => ('str' in item ? item.str : '')).join(' ')).toContain('Breaking it open');
});
