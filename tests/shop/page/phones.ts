import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const SCREEN = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;
const CHROMIUM = '/usr/bin/chromium';

export function browser(): Promise<Browser> {
  return chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
}

/** A browser with a memory of its own on disk, that can be closed and opened again. */
export async function lastingBrowser(
  folder = mkdtempSync(join(tmpdir(), 'chamberwright-phone-')),
): Promise<{ context: BrowserContext; folder: string }> {
  return {
    context: await chromium.launchPersistentContext(folder, { executablePath: CHROMIUM, args: FLAGS, ...SCREEN }),
    folder,
  };
}

/** A phone with a memory of its own, opened at this link. `clock` is how far its clock is off, ms. */
export async function phone(from: Browser, link: string, clock = 0): Promise<{ context: BrowserContext; page: Page }> {
  const context = await from.newContext(SCREEN);
  if (clock !== 0) {
    await context.addInitScript((off) => {
      const Right = Date;
      const now = () => Right.now() + off;
      // @ts-expect-error a Date that is off, everywhere in the page
      globalThis.Date = class extends Right {
        constructor(...given: []) {
          if (given.length === 0) super(now());
          else super(...given);
        }
        static override now = now;
      };
    }, clock);
  }
  const page = await context.newPage();
  await page.goto(link);
  await live(page);
  return { context, page };
}

/** Waits until the page is connected and everything is sent. */
export async function live(page: Page): Promise<void> {
  await page.getByText('Connected', { exact: true }).waitFor({ timeout: 60_000 });
}

/** The line of a block in the list. */
export function line(page: Page, id: string) {
  return page.locator('main li.block').filter({ has: page.getByText(id, { exact: true }) });
}

/**
 * Presses the next step of a block, each press a second after the one before by its own time, so that none is taken for
 * a double touch.
 */
export async function press(page: Page, id: string, step: string): Promise<void> {
  const button = page.getByRole('button', { name: `${id}, next: ${step}`, exact: true });
  await button.evaluate(
    (target, at) => {
      const click = new MouseEvent('click', { bubbles: true });
      Object.defineProperty(click, 'timeStamp', { value: at });
      target.dispatchEvent(click);
    },
    (presses += 1000),
  );
}
let presses = 1e9;

/** Waits until a block stands at a step on this page. */
export async function stands(page: Page, id: string, at: string): Promise<void> {
  await line(page, id).locator('.marks').getByText(at).waitFor({ timeout: 60_000 });
}

/** Everything the page logged or threw that is a fault of the page. */
export function faultsOf(page: Page): string[] {
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' && /Content Security|violat|Uncaught/i.test(message.text()))
      faults.push(message.text());
  });
  return faults;
}

/** Every target on the page is at least 44 px in both directions (WCAG 2.2, 2.5.5). */
export async function expectLargeTargets(page: Page): Promise<number> {
  const sizes = await page
    .locator('button:visible, input:visible, select:visible, textarea:visible, a:visible')
    .evaluateAll((targets) =>
      targets.map((target) => {
        const { width, height } = target.getBoundingClientRect();
        return { width, height, what: target.outerHTML.slice(0, 80) };
      }),
    );
  expect(sizes.filter(({ width, height }) => width < 44 || height < 44)).toEqual([]);
  return sizes.length;
}
