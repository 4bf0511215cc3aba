import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readJob } from '../../../src/job/whole/read.js';
import { planOf } from '../../../src/plan.js';
import { setOf } from '../../papers/wholeSet.js';

test('sheets of a board that is a scan ask for no measures that such a job refuses', () => {
  const at = (name: string) => fileURLToPath(new URL(`../../../samples/scan/${name}`, import.meta.url));
  const text = readFileSync(at('shore-watch.yaml'), 'utf8');
  const beside = (name: string) => readFileSync(at(name));
  const { job } = readJob(text, 'shore-watch.yaml', () => undefined, undefined, beside);
  const { pages } = setOf(planOf(job!), { only: ['cover', 'face', 'router'] });
  const said = JSON.stringify(pages);
  expect(said).not.toContain('write shaped:');
  expect(said).not.toContain('shaped: in the job');
  const faces = pages.filter(({ kind }) => kind === 'tiled');
  expect(faces.length).toBeGreaterThan(0);
  for (const { use } of faces) expect(use!.when).toContain('where the scan is of this board as it was shaped');
});
