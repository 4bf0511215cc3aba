import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';

const MAIN = resolve('dist/src/cli/main.js');

/** Runs the built program as a builder would. The tests' command builds it first. */
export function chamberwright(args: readonly string[], options: { readonly cwd?: string; readonly as?: number } = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [MAIN, ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    ...(options.cwd !== undefined && { cwd: options.cwd }),
    ...(options.as !== undefined && { uid: options.as }),
  });
  return { code: status, out: stdout, err: stderr };
}
