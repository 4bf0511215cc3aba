// npm run adversary -- COUNT SEED: hard boards of another generator than the soak's, every wall against an independent
// solid-geometry kernel.
import { spawnSync } from 'node:child_process';

const [count = '500', seed = String(Date.now() % 2 ** 20)] = process.argv.slice(2);
if (!/^\d+$/.test(count) || !/^-?\d+$/.test(seed)) {
  console.error('npm run adversary -- COUNT SEED, both whole numbers');
  process.exit(2);
}
const { status } = spawnSync('npx', ['vitest', 'run', 'tests/proof/hard.test.ts'], {
  stdio: 'inherit',
  env: { ...process.env, HARD: count, SEED: seed },
});
process.exit(status ?? 1);
