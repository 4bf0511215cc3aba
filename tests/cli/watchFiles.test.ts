import { mkdtempSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { watchFiles } from '../../src/cli/watchFiles.js';

const PATIENCE = { timeout: 60_000, interval: 100 };

it('a file that is written, or replaced by another, is noticed each time, until nobody watches any more', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cw-'));
  const [job, table, draft] = ['job.yaml', 'table.csv', 'draft'].map((name) => join(folder, name)) as [
    string,
    string,
    string,
  ];
  writeFileSync(job, 'a');
  writeFileSync(table, 'a');
  let times = 0;
  const stop = watchFiles([job, table], async () => void times++);
  writeFileSync(job, 'ab');
  await expect.poll(() => times, PATIENCE).toBe(1);
  writeFileSync(draft, 'abc');
  renameSync(draft, table);
  await expect.poll(() => times, PATIENCE).toBe(2);
  stop();
});
