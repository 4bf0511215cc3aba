import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StoredEvent } from '../../../src/shop/log/event.js';
import { stageOf } from '../../../src/shop/log/state.js';
import { shopFrom, type ToldShop, type WholeShop } from '../../../src/shop/report/wholeShop.js';
import { startShopServer } from '../../../src/shop/server/shopServer.js';
import { built } from '../built.js';
import { box, rescueBlocks } from '../rescueBoard.js';
import { running, type Running } from '../running.js';
import { opened, scratchFolder } from '../store/scratch.js';
import { browser, expectLargeTargets, faultsOf, lastingBrowser, line, live, phone, press, stands } from './phones.js';

const folder = scratchFolder();
const SHARED_AT = '127.0.0.2';
const DAY = 86_400_000;
let chromium: Browser;
const stops: (() => Promise<unknown>)[] = [];

beforeAll(async () => {
  chromium = await browser();
});
afterAll(async () => {
  await chromium.close();
  for (const stop of stops) await stop();
});

async function tracker(name: string, share = '', port = ''): Promise<Running> {
  const server = await running(join(folder, `${name}.tracker.db`), share, port);
  stops.push(() => server.stop());
  return server;
}

async function whole({ port, token }: Running): Promise<WholeShop> {
  return shopFrom(
    (await (
      await fetch(`http://127.0.0.1:${port}/api/shop`, { headers: { Authorization: `Bearer ${token}` } })
    ).json()) as ToldShop,
  );
}

/** What the tracker's file holds, read from outside. */
async function log(name: string): Promise<readonly StoredEvent[]> {
  const store = await opened(join(folder, `${name}.tracker.db`));
  const events = await store.eventsAfter(0);
  await store.close();
  return events;
}

const waitFor = async (claim: () => Promise<boolean>) =>
  expect.poll(claim, { timeout: 60_000, interval: 100 }).toBe(true);

describe('two phones on one list', async () => {
  it('show each other’s steps; the same block pressed on both is one step; an undo on one shows on both', async () => {
    const server = await tracker('two');
    const [one, two] = [await phone(chromium, server.ownerLink), await phone(chromium, server.ownerLink, -DAY)];
    const faults = [faultsOf(one.page), faultsOf(two.page)];
    await press(one.page, 'L3-01', 'Marked');
    await stands(two.page, 'L3-01', 'Marked');
    // Both press the same block before either hears of the other.
    await Promise.all([one.context.setOffline(true), two.context.setOffline(true)]);
    await press(one.page, 'L3-01', 'Cut');
    await press(two.page, 'L3-01', 'Cut');
    await Promise.all([one.context.setOffline(false), two.context.setOffline(false)]);
    await waitFor(async () => (await whole(server)).state.last === 3);
    expect(stageOf((await whole(server)).state.blocks.get('L3-01'))).toBe('cut');
    await stands(one.page, 'L3-01', 'Cut');
    await stands(two.page, 'L3-01', 'Cut');
    await press(two.page, 'L3-02', 'Marked');
    await stands(one.page, 'L3-02', 'Marked');
    await two.page.getByRole('button', { name: 'Undo' }).click();
    await stands(one.page, 'L3-02', 'Not begun');
    expect(faults).toEqual([[], []]);
    await Promise.all([one.context.close(), two.context.close()]);
  });

  it('one offline goes on, says how much is unsent, and delivers in order, once, with its wrong clock set right', async () => {
    const server = await tracker('offline');
    const [near, far] = [await phone(chromium, server.ownerLink), await phone(chromium, server.ownerLink, 3 * DAY)];
    await far.context.setOffline(true);
    const before = Date.now();
    await press(far.page, 'L3-01', 'Marked');
    await press(far.page, 'L3-01', 'Cut');
    await press(far.page, 'L3-02', 'Marked');
    await far.page.getByText('3 unsent, kept on this phone').waitFor();
    await stands(far.page, 'L3-01', 'Cut');
    await press(near.page, 'L3-03', 'Marked');
    await far.context.setOffline(false);
    await live(far.page);
    await stands(near.page, 'L3-02', 'Marked');
    await stands(far.page, 'L3-03', 'Marked');
    const events = await log('offline');
    const fromFar = events.filter(({ at, received }) => at - received > DAY);
    expect(events).toHaveLength(4);
    expect(fromFar.map(({ seq, what }) => [seq, 'block' in what && what.block, 'step' in what && what.step])).toEqual([
      [1, 'L3-01', 'marked'],
      [2, 'L3-01', 'cut'],
      [3, 'L3-02', 'marked'],
    ]);
    for (const { happened, at } of fromFar) {
      expect(at - happened).toBeGreaterThan(2 * DAY);
      expect(happened).toBeLessThanOrEqual(Date.now());
      expect(happened).toBeGreaterThan(before - 120_000);
    }
    await Promise.all([near.context.close(), far.context.close()]);
  });

  it('what was pressed while the server was down survives a reload and a closed browser, and arrives once', async () => {
    const server = await tracker('closed');
    const first = await lastingBrowser();
    const page = await first.context.newPage();
    await page.goto(server.ownerLink);
    await live(page);
    const token = server.token;
    await server.stop('SIGKILL');
    await press(page, 'R2-07', 'Marked');
    await press(page, 'R2-08', 'Marked');
    await page.getByText('2 unsent, kept on this phone').waitFor();
    await page.reload().catch(() => undefined);
    await first.context.close();
    const again = await tracker('closed', '', String(server.port));
    expect(again.port).toBe(server.port);
    const second = await lastingBrowser(first.folder);
    const opened = await second.context.newPage();
    await opened.goto(`http://127.0.0.1:${again.port}/shop/`);
    // Another start has another key for the owner: the page says so and keeps what it has.
    await opened.getByText('2 unsent, kept on this phone.').waitFor();
    expect(again.token).not.toBe(token);
    await opened.goto('about:blank');
    await opened.goto(again.ownerLink);
    await live(opened);
    await stands(opened, 'R2-08', 'Marked');
    expect((await log('closed')).map(({ seq, what }) => [seq, 'block' in what && what.block])).toEqual([
      [1, 'R2-07'],
      [2, 'R2-08'],
    ]);
    await second.context.close();
  });

  it('an answer that is lost on the way does not make two events of one', async () => {
    const server = await tracker('lost-answer');
    const { context, page } = await phone(chromium, server.ownerLink);
    let lost = 0;
    await page.route('**/api/events', async (route) => {
      if (lost++ < 2) {
        await route.fetch(); // The server gets it and answers; the page never hears.
        await route.abort();
      } else await route.continue();
    });
    await press(page, 'R2-07', 'Marked');
    await expect.poll(() => lost, { timeout: 60_000 }).toBeGreaterThan(2);
    await live(page);
    expect(await log('lost-answer')).toHaveLength(1);
    await context.close();
  });
});

describe('a phone in the network', async () => {
  it('is let in by the code in the link, stays in without it, and another with the same code is not', async () => {
    const server = await tracker('shared', SHARED_AT);
    const link = server.phoneLink!;
    const { context, page } = await phone(chromium, link);
    expect(page.url()).not.toContain('code');
    await page.reload();
    await live(page);
    await press(page, 'R1-05', 'Marked');
    await waitFor(async () => (await whole(server)).state.last === 1);
    const late = await (await chromium.newContext()).newPage();
    await late.goto(link);
    await late.getByText('That is not the code on the screen.').waitFor();
    await context.close();
    await late.context().close();
  });

  it('opens the block whose address its camera read, typed numbers too', async () => {
    const server = await tracker('label');
    const { context, page } = await phone(chromium, server.ownerLink);
    await page.goto(`http://127.0.0.1:${server.port}/shop/#block=R2-07`);
    await page.getByRole('dialog').getByRole('heading', { name: 'R2-07' }).waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    for (const typed of ['r2-7', 'R207', 'r2 07']) {
      await page.getByLabel('Number').fill(typed);
      await page.getByRole('button', { name: 'Find' }).click();
      await page.getByRole('dialog').getByRole('heading', { name: 'R2-07' }).waitFor();
      await page.getByRole('button', { name: 'Close' }).click();
    }
    await page.getByLabel('Number').fill('Q9-99');
    await page.getByRole('button', { name: 'Find' }).click();
    await page.getByText('No block Q9-99.').waitFor();
    await context.close();
  });
});

describe('work on the page', async () => {
  it('keeps notes and photos of a block, photos taken offline too', async () => {
    const server = await tracker('remarks');
    const { context, page } = await phone(chromium, server.ownerLink);
    await page.goto(`http://127.0.0.1:${server.port}/shop/#block=R2-07`);
    await page.getByLabel('Note').fill('chipped corner');
    await page.getByRole('button', { name: 'Save note' }).click();
    await page.getByRole('dialog').getByText('chipped corner').waitFor();
    await context.setOffline(true);
    const shot = await page.screenshot({ type: 'png' });
    await page.getByLabel('Photo').setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer: shot });
    await page.getByText('Photo waiting to be sent').waitFor();
    await context.setOffline(false);
    await page.getByAltText('Photo of R2-07').waitFor({ timeout: 60_000 });
    const { photos, notes } = (await whole(server)).state.blocks.get('R2-07')!;
    expect(notes.map(({ text }) => text)).toEqual(['chipped corner']);
    expect(photos.map(({ text }) => text)).toEqual([expect.stringMatching(/^[0-9a-f]{64}$/)]);
    await page
      .getByLabel('Photo')
      .setInputFiles({ name: 'a.heic', mimeType: 'image/heic', buffer: Buffer.from('no picture') });
    await page.getByText('That picture could not be read.').waitFor();
    await context.close();
  });

  it('runs the glue’s clock on every phone and shows what is next in the batch', async () => {
    const server = await tracker('gluing');
    const [one, two] = [await phone(chromium, server.ownerLink), await phone(chromium, server.ownerLink, -DAY)];
    for (const step of ['Marked', 'Cut', 'Sanded', 'Dry-fitted']) await press(one.page, 'L3-02', step);
    for (const { page } of [one, two]) {
      await page.getByRole('button', { name: 'Gluing' }).click();
      await page.locator('.next').getByText('L3-02').waitFor({ timeout: 60_000 });
      expect(await page.getByText('Have these ready before you open the glue.').count()).toBe(1);
    }
    await one.page.getByLabel('Open time, min').fill('20');
    const opened = Date.now();
    await one.page.getByRole('button', { name: 'Glue is open' }).click();
    for (const { page } of [one, two]) {
      const shown = await page.getByRole('timer').textContent({ timeout: 60_000 });
      const [, minutes, seconds] = /^(\d\d):(\d\d)$/.exec(shown!)!;
      const left = 60 * Number(minutes) + Number(seconds);
      expect(left).toBeLessThanOrEqual(20 * 60);
      // As much as the test itself took, and what a phone may misjudge of the other's clock.
      expect(left).toBeGreaterThan(20 * 60 - (Date.now() - opened) / 1000 - 60);
    }
    await one.page.getByRole('button', { name: 'L3-02, next: Glued' }).click();
    await two.page.getByText('Nothing in this batch is ready to glue.').waitFor({ timeout: 60_000 });
    await two.page.getByRole('button', { name: 'Stop the clock' }).click();
    await one.page.getByRole('button', { name: 'Glue is open' }).waitFor({ timeout: 60_000 });
    await Promise.all([one.context.close(), two.context.close()]);
  });

  it('filters by what is to be done and by row', async () => {
    const server = await tracker('filters');
    const { context, page } = await phone(chromium, server.ownerLink);
    await press(page, 'R2-07', 'Marked');
    await page.getByLabel('Show').selectOption('to cut');
    await expect.poll(() => page.locator('main li.block').count()).toBe(1);
    expect(await line(page, 'R2-07').count()).toBe(1);
    await page.getByLabel('Show').selectOption('all blocks');
    await page.getByRole('combobox', { name: 'Row' }).selectOption('R3');
    expect(await page.locator('main li.block').count()).toBe(16);
    await context.close();
  });
});

describe('a hand in a glove', () => {
  it('touches twice and records one step; every press can be undone, one after the other', async () => {
    const server = await tracker('double');
    const { context, page } = await phone(chromium, server.ownerLink);
    await page.getByRole('button', { name: 'R2-07, next: Marked', exact: true }).evaluate((button) => {
      for (const at of [1e8, 1e8 + 300]) {
        const click = new MouseEvent('click', { bubbles: true });
        Object.defineProperty(click, 'timeStamp', { value: at });
        // The second touch falls on what the first has made of the button.
        void Promise.resolve().then(() => button.dispatchEvent(click));
      }
    });
    await stands(page, 'R2-07', 'Marked');
    await press(page, 'R2-08', 'Marked');
    await stands(page, 'R2-08', 'Marked');
    await page.getByRole('button', { name: 'Undo' }).click();
    await stands(page, 'R2-08', 'Not begun');
    await page.getByRole('button', { name: 'Undo' }).click();
    await stands(page, 'R2-07', 'Not begun');
    await live(page);
    await waitFor(async () => (await whole(server)).state.last === 4);
    await context.close();
  });

  it('finds a pressed line where it was, in a list filtered by what is to be done', async () => {
    const server = await tracker('held');
    const { context, page } = await phone(chromium, server.ownerLink);
    await page.getByLabel('Show').selectOption('to mark');
    await press(page, 'R2-07', 'Marked');
    await stands(page, 'R2-07', 'Marked');
    await page.getByLabel('Show').selectOption('to cut');
    await page.getByLabel('Show').selectOption('to mark');
    await expect.poll(() => line(page, 'R2-07').count(), { timeout: 60_000 }).toBe(0);
    await context.close();
  });
});

describe('a phone in trouble', () => {
  it('answers an address with an odd block number', async () => {
    const server = await tracker('odd');
    const { context, page } = await phone(chromium, server.ownerLink);
    for (const [hash, title] of [
      ['#block=100%', '100%'],
      ['#block=r2%207', 'R2-07'],
      ['#block=', '(no number)'],
    ] as const) {
      await page.goto(`http://127.0.0.1:${server.port}/shop/${hash}`);
      await page.getByRole('dialog').getByRole('heading', { name: title, exact: true }).waitFor();
      await page.getByRole('button', { name: 'Close' }).click();
    }
    await context.close();
  });

  // Browsers keep six connections to one server (HTTP/1.1) and let the seventh wait.
  it('opens an eighth label beside seven others, and a press on one shows on all', async () => {
    const server = await tracker('many');
    const { context, page } = await phone(chromium, server.ownerLink);
    const pages = [page];
    for (let i = 2; i <= 8; i++) {
      const next = await context.newPage();
      await next.goto(`http://127.0.0.1:${server.port}/shop/`);
      await live(next);
      pages.push(next);
    }
    await press(pages[7]!, 'R2-07', 'Marked');
    for (const each of pages) await stands(each, 'R2-07', 'Marked');
    // The page that listened for all is closed: another takes over.
    await pages[0]!.close();
    await press(pages[3]!, 'R2-08', 'Marked');
    await stands(pages[5]!, 'R2-08', 'Marked');
    await context.close();
  });

  // Chromium without a window hides no tab; the page is told what the standard has it told (WHATWG HTML, page
  // visibility).
  it('hears nothing while its tab is hidden, leaves listening to another, and catches up when it is seen again', async () => {
    const server = await tracker('hidden');
    const { context, page } = await phone(chromium, server.ownerLink);
    const other = await context.newPage();
    await other.goto(`http://127.0.0.1:${server.port}/shop/`);
    await live(other);
    const see = (hidden: boolean) =>
      page.evaluate((isHidden) => {
        Object.defineProperty(document, 'hidden', { value: isHidden, configurable: true });
        document.dispatchEvent(new Event('visibilitychange'));
      }, hidden);
    const streams: string[] = [];
    page.on('request', (request) => {
      if (request.url().includes('/api/changes')) streams.push(request.url());
    });
    await see(true);
    await press(other, 'R2-07', 'Marked');
    await stands(other, 'R2-07', 'Marked');
    await press(other, 'R2-08', 'Marked');
    await stands(other, 'R2-08', 'Marked');
    expect(streams, 'no stream is begun by a tab that nobody sees').toEqual([]);
    await other.close();
    await see(false);
    await stands(page, 'R2-08', 'Marked');
    await live(page);
    await context.close();
  });

  it('delivers what another page of the same phone kept and could not send before it was closed', async () => {
    const server = await tracker('left');
    const { context, page } = await phone(chromium, server.ownerLink);
    const other = await context.newPage();
    await other.goto(`http://127.0.0.1:${server.port}/shop/`);
    await live(other);
    await context.setOffline(true);
    await press(other, 'R2-07', 'Marked');
    await other.getByText('1 unsent, kept on this phone').waitFor();
    await other.close();
    expect((await whole(server)).state.last).toBe(0);
    await context.setOffline(false);
    await stands(page, 'R2-07', 'Marked');
    await live(page);
    await waitFor(async () => (await whole(server)).state.last === 1);
    await context.close();
  });

  it('goes to the batch whose glue is open, until another is chosen', async () => {
    const server = await tracker('open-glue');
    const [one, two] = [await phone(chromium, server.ownerLink), await phone(chromium, server.ownerLink)];
    for (const { page } of [one, two]) await page.getByRole('button', { name: 'Gluing' }).click();
    await one.page.getByLabel('Batch').selectOption('R2');
    await one.page.getByLabel('Open time, min').fill('20');
    await one.page.getByRole('button', { name: 'Glue is open' }).click();
    await two.page.getByRole('timer').waitFor({ timeout: 60_000 });
    expect(await two.page.getByLabel('Batch').inputValue()).toBe('R2');
    await two.page.getByLabel('Batch').selectOption('R3');
    await two.page.getByText('The glue is open for batch R2.').waitFor();
    await two.page.getByRole('button', { name: 'Go to batch R2' }).click();
    await two.page.getByRole('timer').waitFor();
    await Promise.all([one.context.close(), two.context.close()]);
  });

  it('shows at 360 px what a changed plan asks, nothing under a button, the connection always in view', async () => {
    const page360 = { width: 360, height: 740 };
    const store = await opened(join(folder, 'changed.tracker.db'));
    const { pageFolder } = await built();
    const server = await startShopServer({
      store,
      job: 'Rescue board 12',
      units: 'mm',
      blocks: rescueBlocks(),
      pageFolder,
      port: 0,
      failed: (error) => console.error(error),
    });
    if ('problem' in server) throw new Error(server.problem.what);
    stops.push(() => server.close().then(() => store.close()));
    const { context, page } = await phone(chromium, server.ownerLink);
    await page.setViewportSize(page360);
    for (const id of ['L3-01', 'L3-02', 'L3-03']) {
      await press(page, id, 'Marked');
      await press(page, id, 'Cut');
      await stands(page, id, 'Cut');
    }
    await live(page);
    const [first, second, third, ...rest] = rescueBlocks();
    const changed = [box(first!.id, 1234.5, 250.5, 145.5), box(second!.id, 120, 40, 40), third!, ...rest];
    expect(await server.replacePlan('Rescue board 12', changed, 'mm')).toMatchObject({ ok: true });
    await page.getByText('The plan has changed: 1 to make new, 1 to trim.').waitFor({ timeout: 60_000 });
    const overlaps = await page.locator('main li.block').evaluateAll(
      (lines) =>
        lines.filter((each) => {
          const words = each.querySelector('.sizes')!;
          const range = document.createRange();
          range.selectNodeContents(words);
          return range.getBoundingClientRect().right > each.querySelector('.step')!.getBoundingClientRect().left;
        }).length,
    );
    expect(overlaps).toBe(0);
    await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
    await expect
      .poll(() => page.locator('nav .link').evaluate((one) => one.getBoundingClientRect().bottom > 0), {
        timeout: 60_000,
      })
      .toBe(true);
    await page.getByRole('button', { name: 'Show what to do' }).click();
    await expect.poll(() => page.locator('main li.block').count(), { timeout: 60_000 }).toBe(2);
    await page.getByRole('button', { name: 'L3-01, to make new' }).click();
    await page.getByText('make it new, 1234.5 × 250.5 × 145.5 mm').waitFor();
    await page.getByRole('button', { name: 'Made new: cut to this plan' }).click();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByText('The plan has changed: 1 to trim.').waitFor({ timeout: 60_000 });
    await stands(page, 'L3-01', 'Cut');
    await context.close();
  });
});

describe('for everybody’s eyes and hands', async () => {
  const views: readonly (readonly [string, (page: Page) => Promise<void>])[] = [
    ['blocks', async () => undefined],
    ['to cut', async (page) => void (await page.getByLabel('Show').selectOption('to cut'))],
    ['gluing', async (page) => page.getByRole('button', { name: 'Gluing' }).click()],
    ['last', async (page) => page.getByRole('button', { name: 'Last' }).click()],
    ['more', async (page) => page.getByRole('button', { name: 'More' }).click()],
    [
      'card',
      async (page) =>
        page
          .getByRole('button', { name: /^R2-07/ })
          .first()
          .click(),
    ],
  ];

  it.each(['light', 'dark'] as const)(
    'axe finds nothing and every target is 44 px or more, %s',
    async (colorScheme) => {
      const server = await tracker(`axe-${colorScheme}`);
      const { context, page } = await phone(chromium, server.ownerLink);
      await page.emulateMedia({ colorScheme });
      await press(page, 'R2-07', 'Marked');
      await context.setOffline(true);
      await press(page, 'R2-08', 'Marked');
      await page.getByText(/\d unsent, kept on this phone/).waitFor();
      for (const [name, go] of views) {
        await go(page);
        await page.evaluate(axe.source);
        const { violations } = await page.evaluate(() => (globalThis as unknown as { axe: typeof axe }).axe.run());
        expect(violations.map(({ id, nodes }) => `${name}: ${id} ${nodes[0]?.html}`)).toEqual([]);
        expect(await expectLargeTargets(page)).toBeGreaterThan(5);
        const [width, inner] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
        expect(width, `${name} is not wider than the phone`).toBeLessThanOrEqual(inner!);
        if (name === 'more') await page.getByRole('button', { name: 'Blocks' }).click();
      }
      await context.close();
    },
  );

  it('axe finds nothing on the page that asks for the code', async () => {
    const server = await tracker('axe-welcome', SHARED_AT);
    const page = await (await chromium.newContext()).newPage();
    await page.goto(server.phoneLink!.split('#')[0]!);
    await page.getByLabel('Code').waitFor();
    await page.evaluate(axe.source);
    const { violations } = await page.evaluate(() => (globalThis as unknown as { axe: typeof axe }).axe.run());
    expect(violations.map(({ id }) => id)).toEqual([]);
    await page.context().close();
  });
});
