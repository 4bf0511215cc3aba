// npm run soak -- COUNT SEED: boards drawn at random, every wall against an independent solid-geometry kernel.
import { spawnSync } from 'node:child_process';

const [count = '1000', seed = String(Date.now() % 2 ** 31)] = process.argv.slice(2);
if (!/^\d+$/.test(count) || !/^-?\d+$/.test(seed)) {
  console.error('npm run soak -- COUNT SEED, both whole numbers');
  process.exit(2);
}
const { status } = spawnSync('npx', ['vitest', 'run', 'tests/proof/random.test.ts'], {
  stdio: 'inherit',
  env: { ...process.env, BOARDS: count, SEED: seed },
});
process.exit(status ?? 1);
