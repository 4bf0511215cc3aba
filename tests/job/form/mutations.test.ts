import { expect, it } from 'vitest';
import { sayJobFinding } from '../../../src/job/finding.js';
import { readJob, type ReadJob } from '../../../src/job/whole/read.js';
import { besideSamples, textOf } from '../readSample.js';
import { isOfForm, mutations, type Mutation } from './mutate.js';

const COUNT = Number(process.env.SLIPS ?? 216);
const SEED = Number(process.env.SEED ?? 16_015);

const texts = [
  'samples/tarn-rescue.yaml',
  'samples/mere-prone.yaml',
  'samples/fell-short.yaml',
  'templates/starter.yaml',
].map(textOf);

/** Words of those who write parsers. */
const JARGON =
  /\b(yaml|json|zod|scalar|token|flow|sequence|mapping|directive|node|implicit|stream|anchor|alias|tuple|undefined|null|NaN|object|array|string|boolean|integer|invalid|unexpected|expected|schema|parse|parser|indent|indentation|regex|infinity)\b/i;

/** Lines that say something, counted: what stands behind a # and empty lines lie between no two of them. */
function placeOf(text: string, line: number): number {
  const lines = text.split('\n').slice(0, line);
  return lines.filter((each) => /^\s*[^\s#]/.test(each)).length;
}

function isTold({ text, line }: Mutation, { findings }: ReadJob): boolean {
  return findings.some(
    ({ where }) => where.line !== undefined && Math.abs(placeOf(text, where.line) - placeOf(text, line)) <= 1,
  );
}

it(`of ${COUNT} files with a slip each, seed ${SEED}: what is refused is told without jargon, a slip of form at its line`, () => {
  const table: Record<string, { files: number; refused: number; atItsLine: number; told: number; silent: number }> = {};
  const found = mutations(texts, COUNT, SEED);
  expect(found).toHaveLength(COUNT);
  for (const mutation of found) {
    const read = readJob(mutation.text, 'job.yaml', besideSamples);
    const counts = (table[mutation.kind] ??= { files: 0, refused: 0, atItsLine: 0, told: 0, silent: 0 });
    const said = read.findings.map(sayJobFinding);
    const which = `${mutation.kind}, line ${mutation.line}: ${mutation.written}\n${said.join('\n')}`;
    counts.files++;
    for (const { what, remedy } of read.findings) {
      expect(`${what} → ${remedy}`, which).not.toMatch(JARGON);
      expect(what, which).not.toBe('');
      expect(remedy, which).not.toBe('');
    }
    if (read.job) {
      if (read.job.doubts) counts.told++;
      else counts.silent++;
      continue;
    }
    counts.refused++;
    const near = isTold(mutation, read);
    if (near) counts.atItsLine++;
    if (isOfForm(mutation.kind)) expect(near, which).toBe(true);
  }
  if (process.env.SLIPS !== undefined) console.table(table);
}, 1_200_000);
