import axe, { type AxeResults } from 'axe-core';
import { afterAll, expect, test } from 'vitest';
import { closeBrowser, opened } from './opened.js';

afterAll(closeBrowser);

/** WCAG 2.2, levels A and AA, and what axe-core holds for good practice. */
const looks = [
  { width: 1280, height: 900, scheme: 'light' },
  { width: 1280, height: 900, scheme: 'dark' },
  { width: 390, height: 844, scheme: 'light' },
  { width: 390, height: 844, scheme: 'dark' },
] as const;

test.each(looks)('axe-core finds nothing at $width px, $scheme, with everything unfolded', async (look) => {
  const { page, close } = await opened('tarn-rescue.yaml', look);
  try {
    await page.locator('[data-compare]').selectOption('mere-prone.yaml');
    await page.locator('.compare table').waitFor();
    await page.locator('[data-path="chambers.web"]').fill('nonsense');
    await page.locator('[data-path="chambers.web"]').press('Enter');
    await page.locator('.field.wrong').first().waitFor();
    for (const summary of await page.locator('summary').all()) await summary.click();
    // By the debugger's way in, not the page's: the page itself runs no script but its own.
    const found = (await page.evaluate(
      `${axe.source};axe.run(document, { resultTypes: ['violations'] })`,
    )) as AxeResults;
    expect(
      found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`),
    ).toEqual([]);
    expect(found.passes.length).toBeGreaterThan(20);
  } finally {
    await close();
  }
});

test('nothing is wider than a phone of 390 px', async () => {
  const { page, close } = await opened('tarn-rescue.yaml', { width: 390, height: 844 });
  try {
    for (const summary of await page.locator('summary').all()) await summary.click();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  } finally {
    await close();
  }
});
