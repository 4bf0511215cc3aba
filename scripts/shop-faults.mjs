// npm run shop-faults -- COUNT: what happens in a shop, so many times each, and the table of it that the README shows.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const [count = '100'] = process.argv.slice(2);
if (!/^\d+$/.test(count)) {
  console.error('npm run shop-faults -- COUNT, a whole number');
  process.exit(2);
}
const folder = mkdtempSync(join(tmpdir(), 'shop-faults-'));
const table = join(folder, 'table.md');
const { status } = spawnSync('npx', ['vitest', 'run', 'tests/shop/faults.test.ts'], {
  stdio: 'inherit',
  env: { ...process.env, FAULTS: count, FAULTS_TABLE: table },
});
if (status === 0) {
  console.log(
    '| what happens | trials | acknowledged | gone from the disk, and said so | lost in silence | shown, never told |',
  );
  console.log('| --- | --: | --: | --: | --: | --: |');
  console.log(readFileSync(table, 'utf8'));
}
rmSync(folder, { recursive: true });
process.exit(status ?? 1);
