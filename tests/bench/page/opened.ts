import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { startBenchServer, type BenchServer } from '../../../src/open/server.js';
import { PATIENCE } from '../../../src/bench/state/bench.js';
import { builtPage } from './built.js';

const SAMPLES = fileURLToPath(new URL('../../../samples/', import.meta.url));
const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';

/** A copy of the samples in a folder of its own, a server for one of them, and a page in a browser that shows it. */
export interface Opened {
  readonly page: Page;
  readonly folder: string;
  readonly server: BenchServer;
  /** What the browser complained of. */
  readonly complaints: readonly string[];
  readonly close: () => Promise<void>;
}

export interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly scheme?: 'light' | 'dark';
}

let browser: Promise<Browser> | undefined;

export async function opened(
  job: string,
  { width = 1280, height = 900, scheme = 'light' }: Look = {},
): Promise<Opened> {
  const folder = mkdtempSync(join(tmpdir(), 'on-bench-'));
  cpSync(SAMPLES, folder, { recursive: true });
  const complaints: string[] = [];
  const server = await startBenchServer({
    job: join(folder, job),
    pageFolder: await builtPage(),
    port: 0,
    failed: (error) => complaints.push(String(error)),
  });
  browser ??= chromium.launch({ executablePath: '/usr/bin/chromium', args: FLAGS.split(' ') });
  const context = await (await browser).newContext({ viewport: { width, height }, colorScheme: scheme });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  page.on('console', (message) => {
    // A refused save is told by its status; the browser writes that down as an error of its own.
    if (['error', 'warning'].includes(message.type()) && !message.text().includes('409'))
      complaints.push(message.text());
  });
  page.on('pageerror', ({ message }) => complaints.push(message));
  await page.goto(server.link);
  await page.waitForSelector('[data-chamber]').catch(async (error: Error) => {
    throw new Error(
      `no plan came: ${complaints.join('; ')} ${await page.locator('.said, .mistakes').allTextContents()}`,
      {
        cause: error,
      },
    );
  });
  return {
    page,
    folder,
    server,
    complaints,
    close: async () => {
      await context.close();
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export async function closeBrowser(): Promise<void> {
  await (await browser)?.close();
  browser = undefined;
}

/** The plan on show is the one of the text as it stands. */
export async function settled(page: Page): Promise<void> {
  // A change whose plan is not there yet is drawn after some time only.
  await page.waitForTimeout(2 * PATIENCE);
  await page.waitForFunction(
    () => document.querySelector('svg.above') && !document.querySelector('[data-current="false"]'),
  );
}
