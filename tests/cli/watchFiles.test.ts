import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { watched, watchFiles } from '../../src/cli/watchFiles.js';

const PATIENCE = { timeout: 60_000, interval: 100 };

it('a file that is written, replaced, or put in its place later, is noticed each time, from when it was read until nobody watches any more', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cw-'));
  const [job, table, draft, late] = ['job.yaml', 'table.csv', 'draft', 'late.csv'].map((name) =>
    join(folder, name),
  ) as [string, string, string, string];
  writeFileSync(job, 'a');
  writeFileSync(table, 'a');
  const read = [job, table].map(watched);
  // Written while the job was being planned, before anybody watched.
  writeFileSync(job, 'ab');
  let times = 0;
  const stop = watchFiles(read, async () => {
    times++;
    // From the second time on the job names another table, which is not there yet.
    return [job, table, ...(times > 1 ? [late] : [])].map(watched);
  });
  await expect.poll(() => times, PATIENCE).toBe(1);
  writeFileSync(draft, 'abc');
  renameSync(draft, table);
  await expect.poll(() => times, PATIENCE).toBe(2);
  writeFileSync(late, 'a');
  await expect.poll(() => times, PATIENCE).toBe(3);
  // Gone for a moment is no change; back with another content is.
  rmSync(table);
  writeFileSync(table, 'abcd');
  await expect.poll(() => times, PATIENCE).toBe(4);
  stop();
});
