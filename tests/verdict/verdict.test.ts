import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { makePapers } from '../../src/open/makePapers.js';
import { readJob } from '../../src/job/whole/read.js';
import { planOf, type Plan } from '../../src/plan.js';
import { resultOf } from '../../src/view/result.js';
import { proofOf } from '../../src/proof/proof.js';
import { sayFinding } from '../../src/finding/say.js';
import { verdictOf } from '../../src/verdict/verdict.js';
import { called } from '../cli/called.js';

const MERE = readFileSync('samples/mere-prone.yaml', 'utf8');
const TARN = readFileSync('samples/tarn-rescue.yaml', 'utf8');
const change = (from: RegExp, to: string) => {
  expect(MERE).toMatch(from);
  return MERE.replace(from, to);
};

/** Jobs, whether their plan stands, and what is said of them. */
const JOBS: readonly (readonly [what: string, text: () => string, stands: boolean, said: RegExp])[] = [
  ['a sound job', () => MERE, true, /^\d+ chambers: every wall is at least what is asked\.$/m],
  [
    'a cutter too short',
    () => TARN.replace('chambers:', 'routing: {cutterLength: 1 1/2 in}\n\nchambers:'),
    false,
    /the cutter does not reach/,
  ],
  [
    'no chamber at all',
    () => change(/cutterLength: 130/, 'cutterLength: 40'),
    false,
    /there is not one chamber in this plan/,
  ],
  [
    'a joint left without dots',
    () => change(/^chambers:\n/m, 'dots: {size: 60, margin: 60}\n\nchambers:\n'),
    false,
    /is dotted and has no dot/,
  ],
  [
    'a weighing that cannot be right',
    () => `${MERE}\nweighings:\n  - {stage: shaped, weight: 90 kg}\n`,
    true,
    /90(\.0+)? kg lies far outside/,
  ],
];

async function papersOnPage(plan: Plan): Promise<string | undefined> {
  for await (const news of makePapers(plan, { paper: 'A4', only: ['check'] }))
    if (news.kind === 'failed') return news.why;
  return undefined;
}

describe.each(JOBS)('%s', (_, text, stands, said) => {
  test('is judged alike by plan, check, papers and the page, in the same words and with the same code', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'cw-'));
    const job = join(folder, 'job.yaml');
    writeFileSync(job, text());
    const plan = planOf(readJob(text(), 'job.yaml', () => undefined).job!);
    const verdict = verdictOf(plan, proofOf(plan));
    expect(verdict.stands).toBe(stands);
    const refused = verdict.refusals.map(sayFinding);
    const doubted = verdict.doubts.map(sayFinding);
    const against = [...refused, ...doubted];
    const code = against.length > 0 ? 1 : 0;

    const planned = await called(['plan', job]);
    const checked = await called(['check', job]);
    const printed = await called(['papers', job, '-o', join(folder, 'out'), '--only', 'check']);
    for (const each of [planned, checked, printed]) {
      expect(each.code).toBe(code);
      for (const line of against) expect(each.out + each.err).toContain(line);
    }
    for (const each of [planned, checked]) expect(each.out + each.err).toMatch(said);
    expect((await called(['plan', job, '--json'])).code).toBe(code);
    expect(readdirSync(folder).includes('out')).toBe(stands);

    // The page shows what is in the result, and its papers are made by the same verdict.
    expect(resultOf(plan).verdict).toEqual({ stands, refusals: refused, doubts: doubted });
    const onPage = await papersOnPage(plan);
    if (stands) expect(onPage).toBe(undefined);
    else for (const line of refused) expect(onPage).toContain(line);
  });
});

describe('after shaping', () => {
  const shaped = (thickness: string) => `${MERE}\nshaped:\n  - {at: 2 m, thickness: ${thickness}, off: deck}\n`;
  const checkOf = async (text: string, ...options: string[]) => {
    const job = join(mkdtempSync(join(tmpdir(), 'cw-')), 'job.yaml');
    writeFileSync(job, text);
    return called(['check', job, ...options]);
  };

  test('check says first how many must shrink and the worst, then each row, and each chamber only on request', async () => {
    const { code, err } = await checkOf(shaped('140 mm'));
    expect(code).toBe(1);
    const [first, ...rest] = err.split('\n');
    const [, must, of] =
      /^As shaped: (\d+) of (\d+) chambers as drawn must shrink; the worst is [LCR]\d?-\d+\w?, deck skin [\d.]+ mm too thin\.$/.exec(
        first!,
      )!;
    const rows = rest.filter((line) => /^ {2}[LCR]\d?: \d+ of \d+; the worst is /.test(line));
    expect(rows.reduce((sum, line) => sum + Number(/: (\d+) of/.exec(line)![1]), 0)).toBe(Number(must));
    expect(err.split('\n').length).toBeLessThan(12);
    expect(Number(of)).toBeGreaterThanOrEqual(Number(must));

    const all = await checkOf(shaped('140 mm'), '--all');
    const names = new Set([...all.err.matchAll(/^ {2}([LCR]\d?-\d+\w?): /gm)].map(([, id]) => id));
    expect(names.size).toBe(Number(must));
  });

  test('none must shrink by what rounds to nothing, and none to the size it has', async () => {
    for (const thickness of ['149.9 mm', '149.5 mm', '148 mm', '5 5/8 in']) {
      const { err } = await checkOf(shaped(thickness), '--all');
      expect(err).not.toMatch(/\b0\.0 mm under|\b0\.000 in under|to nothing/);
      for (const [, to, from] of err.matchAll(/^ +to (.*), from (.*)$/gm)) expect(to).not.toBe(from);
    }
  });
});
