import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, openSync, readdirSync, symlinkSync } from 'node:fs';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { boardFolder } from './files.js';

const MAIN = resolve('dist/src/cli/main.js');
const FULL = '/dev/full';

/** The built program, with something else in the place of the terminal. */
function withStdio(args: readonly string[], stdio: readonly (number | 'pipe' | 'ignore')[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [MAIN, ...args], {
    encoding: 'utf8',
    stdio: [...stdio],
    maxBuffer: 1 << 28,
  });
  return { code: status, out: stdout, err: stderr };
}

describe('what stands in the place of the terminal', () => {
  test.skipIf(!existsSync(FULL))(
    'a full disk for what is printed is told in words, and the command ends with 2',
    () => {
      const { job } = boardFolder();
      const { code, err } = withStdio(['plan', job], ['ignore', openSync(FULL, 'w'), 'pipe']);
      expect(code).toBe(2);
      expect(err).toMatch(/^What is printed cannot be taken: .*full/m);
      expect(err).not.toMatch(/^\s+at /m);
    },
  );

  test.skipIf(!existsSync(FULL))('a full disk for what is said beside it changes nothing', () => {
    const { job } = boardFolder();
    const full = withStdio(['check', job], ['ignore', 'pipe', openSync(FULL, 'w')]);
    expect(full).toMatchObject({ code: 0, out: expect.stringContaining('every wall is at least') as string });
  });

  test('a reader that has seen enough, and an error stream that nobody reads, change nothing of what it ends with', () => {
    const { job } = boardFolder();
    const shell = (line: string) =>
      spawnSync('bash', ['-c', line, 'bash', process.execPath, MAIN, job], { encoding: 'utf8' }).stdout.trim();
    expect(shell('"$1" "$2" plan "$3" --json | head -c 10 >/dev/null; echo ${PIPESTATUS[0]}')).toBe('0');
    expect(shell('"$1" "$2" check "$3" 2>&- >/dev/null; echo $?')).toBe('0');
    expect(shell('"$1" "$2" check "$3.no" 2>&- >/dev/null; echo $?')).toBe('2');
  });

  test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'papers stopped by %s leave nothing half made',
    async (signal) => {
      const { job } = boardFolder();
      const out = mkdtempSync(join(tmpdir(), 'cw-'));
      const child = spawn(process.execPath, [MAIN, 'papers', job, '-o', out], { stdio: 'ignore' });
      const ended = once(child, 'exit');
      await vi.waitFor(() => expect(readdirSync(out)).not.toEqual([]), { timeout: 60_000, interval: 1 });
      child.kill(signal);
      const [code, by] = (await ended) as [number | null, string | null];
      expect(code !== 0 || by !== null, 'it was stopped').toBe(true);
      expect(readdirSync(out)).toEqual([]);
    },
  );

  const disk = join(mkdtempSync(join(tmpdir(), 'cw-')), 'small-disk');
  mkdirSync(disk);
  const isSmall = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=300k', 'tmpfs', disk]).status === 0;
  test.skipIf(!isSmall)('papers that do not fit on the disk name the file and leave nothing', () => {
    const { job } = boardFolder();
    const { code, err } = withStdio(['papers', job, '-o', join(disk, 'out')], ['ignore', 'pipe', 'pipe']);
    expect(code).toBe(2);
    expect(err).toMatch(/disk is full/i);
    expect(err).toContain(disk);
    expect(err).not.toMatch(/^\s+at /m);
    expect(existsSync(join(disk, 'out')) ? readdirSync(join(disk, 'out')) : []).toEqual([]);
    spawnSync('umount', ['-l', disk]);
  });

  test('a job named by a link is opened in the browser where it is', async () => {
    const { job } = boardFolder();
    const link = join(mkdtempSync(join(tmpdir(), 'cw-')), 'link.yaml');
    symlinkSync(job, link);
    const child = spawn(process.execPath, [MAIN, 'open', link, '--no-browser', '--port', '0'], { stdio: 'pipe' });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (part: Buffer) => (said += part.toString()));
    await vi.waitFor(() => expect(said).toMatch(/http:\/\/127\.0\.0\.1:\d+/), { timeout: 60_000, interval: 50 });
    child.kill('SIGINT');
    await once(child, 'exit');
    expect(readdirSync(join(link, '..'))).toEqual(['link.yaml']);
  });
});
