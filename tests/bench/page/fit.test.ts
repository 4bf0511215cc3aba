import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { parse } from 'yaml';
import { planOf } from '../../../src/plan.js';
import { jobOf, sample } from '../read.js';
import { closeBrowser, opened, settled } from './opened.js';

afterAll(closeBrowser);

test('a board in a moulded blank is shown with what comes off, short places ringed, and laid by three sliders', async () => {
  const { page, complaints, close, folder } = await opened('beck-guard.yaml');
  const plan = planOf(jobOf(sample('beck-guard.yaml')));
  const { short, least, fits } = plan.stock!.blank!;
  const onDeck = short.filter(({ side }) => side === 'deck').length;
  const card = page.locator('section[aria-labelledby="fit-title"]');
  // From above both halves of the deck, from the side all.
  expect(await card.locator('circle.fit-short').count()).toBe(2 * onDeck + short.length);
  // Where less is left than asked, the densest pattern of the walls lies.
  expect(await card.locator('path[data-allowance="thin"]').count()).toBe(1);
  const shown = () => card.locator('[data-fit-least]').getAttribute('data-fit-least').then(Number);
  expect(await shown()).toBeCloseTo(Math.min(...least.map(({ over }) => over)), 2);
  expect(await card.locator('[data-act="find-place"]').isDisabled()).toBe(true);

  await card.locator('[data-slider="place-up"]').fill('20');
  await settled(page);
  await page.waitForFunction(
    (before) => Number(document.querySelector('[data-fit-least]')!.getAttribute('data-fit-least')) < before - 5,
    Math.min(...least.map(({ over }) => over)),
    { timeout: 60_000 },
  );
  await page.keyboard.press('Control+s');
  const placeOnDisk = () => parse(readFileSync(join(folder, 'beck-guard.yaml'), 'utf8')).stock.blank.place;
  await expect.poll(placeOnDisk, { timeout: 60_000 }).toBeDefined();
  const place = placeOnDisk();
  expect(place.up).toBe(20);
  // The two that were not turned stay where they were found, to a step of the rule.
  expect(Math.abs(place.along - fits[0]!.placement.along)).toBeLessThanOrEqual(0.5);
  expect(Math.abs(place.noseUp - fits[0]!.placement.noseUp)).toBeLessThanOrEqual(0.5);

  await card.locator('[data-act="find-place"]').click();
  await page.waitForFunction(
    (before) =>
      Math.abs(Number(document.querySelector('[data-fit-least]')!.getAttribute('data-fit-least')) - before) < 0.01,
    Math.min(...least.map(({ over }) => over)),
    { timeout: 60_000 },
  );
  if (process.env['FIT_SHOT']) await card.screenshot({ path: process.env['FIT_SHOT'] });
  expect(complaints).toEqual([]);
  await close();
}, 240_000);
