// npm run bench: every measurement, one after the other, on this machine. Compare ratios from one run, not times from
// two.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('.', import.meta.url));
const parts = readdirSync(folder).filter((name) => /^bench-.*\.mjs$/.test(name));
let failed = 0;
for (const part of parts.sort()) {
  console.log(`\n# ${part}`);
  const { status } = spawnSync(process.execPath, ['--expose-gc', folder + part], { stdio: 'inherit' });
  if (status !== 0) failed++;
}
process.exit(failed === 0 ? 0 : 1);
