import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readJob } from '../../src/job/whole/read.js';
import { makePapers } from '../../src/open/makePapers.js';
import { planOf } from '../../src/plan.js';
import { called } from '../cli/called.js';

const MERE = readFileSync('samples/mere-prone.yaml', 'utf8');
const CHOICES = { paper: 'Letter', date: '2026-05-01', revision: 'B' };

/** The file that the page hands over, and the one that the command writes, of the same paper of the same job. */
async function bothWays(job: string, only: string): Promise<{ page: Buffer; command: Buffer }> {
  const folder = mkdtempSync(join(tmpdir(), 'cw-'));
  const file = join(folder, 'board.yaml');
  const out = join(folder, 'out');
  writeFileSync(file, job);
  const options = Object.entries(CHOICES).flatMap(([name, value]) => [`--${name}`, value]);
  expect(await called(['papers', file, '-o', out, '--only', only, ...options])).toMatchObject({ code: 0 });
  let page = '';
  const { job: read } = readJob(job, 'board.yaml', () => undefined);
  for await (const news of makePapers(planOf(read!), { ...CHOICES, only: [only] })) {
    if (news.kind === 'failed') throw new Error(news.why);
    if (news.kind === 'file') page = news.base64;
  }
  return { page: Buffer.from(page, 'base64'), command: readFileSync(join(out, 'papers.pdf')) };
}

test('page and command print the same file, for a printer that is off too, and correct it', async () => {
  const exact = await bothWays(MERE, 'pole');
  expect(exact.page.equals(exact.command)).toBe(true);
  const off = await bothWays(`${MERE}\nprinter: {across: 100.4 %, along: 99.1 %}\n`, 'pole');
  expect(off.page.equals(off.command)).toBe(true);
  expect(off.page.equals(exact.page)).toBe(false);
}, 120_000);

test('page and command print the same weights, with what is found by trial among them', async () => {
  const { page, command } = await bothWays(`${MERE}\ntarget: {weight: 9 kg}\n`, 'weights');
  expect(page.equals(command)).toBe(true);
}, 120_000);

test('the page says which papers there are where one is asked for that there is not', async () => {
  const { job } = readJob(MERE, 'board.yaml', () => undefined);
  const said = [];
  for await (const news of makePapers(planOf(job!), { only: ['face-R9'] })) said.push(news);
  expect(said).toEqual([
    {
      kind: 'failed',
      why: expect.stringMatching(/^only: there are no papers face-R9 → among cover, check, /),
    },
  ]);
});
