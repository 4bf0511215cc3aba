// npm run slips -- COUNT SEED: job files with one slip of the hand each; what is refused, told, or passes in silence,
// by kind.
import { spawnSync } from 'node:child_process';

const [count = '5000', seed = '16015'] = process.argv.slice(2);
if (!/^\d+$/.test(count) || !/^-?\d+$/.test(seed)) {
  console.error('npm run slips -- COUNT SEED, both whole numbers');
  process.exit(2);
}
const { status } = spawnSync(
  'npx',
  ['vitest', 'run', 'tests/job/form/mutations.test.ts', 'tests/job/doubts/rates.test.ts'],
  {
    stdio: 'inherit',
    env: { ...process.env, SLIPS: count, SEED: seed },
  },
);
process.exit(status ?? 1);
