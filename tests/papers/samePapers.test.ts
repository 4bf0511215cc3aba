import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readJob } from '../../src/job/whole/read.js';
import { makePapers, paperNamesOf } from '../../src/open/makePapers.js';
import type { PaperChoices } from '../../src/papers/run.js';
import { planOf } from '../../src/plan.js';
import { called } from '../cli/called.js';

const MERE = readFileSync('samples/mere-prone.yaml', 'utf8');
const CHOICES = { paper: 'Letter', date: '2026-05-01', revision: 'B' };

/** The papers that are asked for, by the names that page and command have for it. */
type Asked = Pick<PaperChoices, 'only' | 'phase' | 'with' | 'without'>;

/** The files that the page hands over, and those that the command writes, of the same papers of the same job. */
async function bothWays(job: string, asked: Asked): Promise<{ page: Buffer; command: Buffer }> {
  const folder = mkdtempSync(join(tmpdir(), 'cw-'));
  const file = join(folder, 'board.yaml');
  const out = join(folder, 'out');
  writeFileSync(file, job);
  const options = Object.entries({ ...CHOICES, ...asked }).flatMap(([name, value]) => [`--${name}`, String(value)]);
  expect(await called(['papers', file, '-o', out, ...options])).toMatchObject({ code: 0 });
  const page: Buffer[] = [];
  const command: Buffer[] = [];
  const { job: read } = readJob(job, 'board.yaml', () => undefined);
  for await (const news of makePapers(planOf(read!), { ...CHOICES, ...asked })) {
    if (news.kind === 'failed') throw new Error(news.why);
    if (news.kind !== 'file') continue;
    page.push(Buffer.from(news.base64, 'base64'));
    command.push(readFileSync(join(out, news.name)));
  }
  expect(page.length).toBeGreaterThan(0);
  return { page: Buffer.concat(page), command: Buffer.concat(command) };
}

test('page and command print the same file, for a printer that is off too, and correct it', async () => {
  const exact = await bothWays(MERE, { only: ['pole'] });
  expect(exact.page.equals(exact.command)).toBe(true);
  const off = await bothWays(`${MERE}\nprinter: {across: 100.4 %, along: 99.1 %}\n`, { only: ['pole'] });
  expect(off.page.equals(off.command)).toBe(true);
  expect(off.page.equals(exact.page)).toBe(false);
}, 120_000);

test('page and command print the same weights, with what is found by trial among them', async () => {
  const { page, command } = await bothWays(`${MERE}\ntarget: {weight: 9 kg}\n`, { only: ['weights'] });
  expect(page.equals(command)).toBe(true);
}, 120_000);

test('page and command print the same papers of a phase, with and without what was ticked', async () => {
  const { page, command } = await bothWays(MERE, { phase: 'mark', with: ['tape'], without: ['face'] });
  expect(page.equals(command)).toBe(true);
}, 120_000);

test('the page offers the phases that the command knows, each with the papers that the command makes of it', async () => {
  const { job } = readJob(MERE, 'board.yaml', () => undefined);
  const plan = planOf(job!);
  const { phases, kinds } = paperNamesOf(plan, 'A4', 'routing');
  const file = join(mkdtempSync(join(tmpdir(), 'cw-')), 'board.yaml');
  writeFileSync(file, MERE);
  const refused = await called(['papers', file, '--dry', '--phase', 'nonsense']);
  expect(refused.code).toBe(2);
  expect(refused.err).toContain(`one of ${phases.map(({ id }) => id).join(', ')}`);
  const counted = await called(['papers', file, '--dry', '--phase', 'routing']);
  const names = phases.find(({ id }) => id === 'routing')!.names;
  const own = kinds.filter((kind) => kind.names.some((name) => names.includes(name)));
  const lines = counted.out.split('\n').filter((line) => /^ +\d+ {2}/.test(line));
  expect(lines.map((line) => /^ +(\d+) {2}([^,]+)/.exec(line)!.slice(1).join(' ')).sort()).toEqual(
    own.map(({ pages, kind }) => `${pages} ${kind}`).sort(),
  );
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
