import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const LEFT_BEHIND = ['node_modules', 'dist', 'out', '.git', 'coverage'];
const run = (command: string, args: readonly string[], cwd: string): string =>
  execFileSync(command, args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

/** The packages that a builder gets along with it, and no others: as `npm install --omit=dev` would lay them. */
function layPackages(into: string): void {
  const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
    packages: Record<string, { dev?: boolean; devOptional?: boolean }>;
  };
  for (const [place, { dev, devOptional }] of Object.entries(lock.packages)) {
    const isOwn = /^node_modules\/(@[^/]+\/)?[^/]+$/.test(place);
    if (!isOwn || dev || devOptional || !existsSync(place)) continue;
    mkdirSync(join(into, dirname(place)), { recursive: true });
    symlinkSync(resolve(place), join(into, place));
  }
}

test('a package made from a fresh clone holds the whole program, and runs with nothing beside it but its dependencies', () => {
  const root = mkdtempSync(join(tmpdir(), 'cw-pack-'));
  const clone = join(root, 'clone');
  cpSync('.', clone, { recursive: true, filter: (from) => !LEFT_BEHIND.includes(basename(from)) });
  symlinkSync(resolve('node_modules'), join(clone, 'node_modules'));
  const out = run('npm', ['pack', '--offline', '--silent', '--pack-destination', root], clone);
  run('tar', ['xzf', join(root, out.trim().split('\n').at(-1)!)], root);

  layPackages(root);
  const program = (...args: string[]) => run(process.execPath, ['package/dist/src/cli/main.js', ...args], root);
  expect(program('--version')).toMatch(/^chamberwright \d+\.\d+\.\d+\n$/);
  program('new', 'mine.yaml');
  expect(program('check', 'mine.yaml')).toMatch(/every wall is at least what is asked/);
  expect(program('track', 'mine.yaml')).toMatch(/0 of \d+ blocks glued/);
  expect(program('papers', 'mine.yaml', '-o', 'out', '--only', 'check')).toContain('papers.pdf');
  for (const page of ['shop', 'bench'])
    expect(existsSync(join(root, 'package/dist/page', page, 'index.html'))).toBe(true);
}, 900_000);
