import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openCommand } from '../../src/open/open.js';

async function run(args: readonly string[], pageFolder = tmpdir()) {
  const out: string[] = [];
  const err: string[] = [];
  const browsed: string[] = [];
  const code = await openCommand(args, {
    out: (line) => out.push(line),
    err: (line) => err.push(line),
    pageFolder,
    stopped: Promise.resolve(),
    browse: (link) => browsed.push(link),
  });
  return { code, out: out.join('\n'), err: err.join('\n'), browsed };
}

test('a job is opened at an address of this machine, printed and shown in the browser', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'open-'));
  await writeFile(join(folder, 'heron.yaml'), 'job: Heron\n');
  const { code, out, browsed } = await run([join(folder, 'heron.yaml')]);
  expect(code).toBe(0);
  expect(browsed[0]).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/bench\/#token=[\w-]{43}$/);
  expect(out).toContain(`heron.yaml is on the bench: ${browsed[0]}`);
  expect((await run([join(folder, 'heron.yaml'), '--no-browser'])).browsed).toEqual([]);
});

test('what cannot be opened is said with what to do', async () => {
  expect(await run(['no-such.yaml'])).toMatchObject({
    code: 1,
    err: 'There is no job file no-such.yaml. Begin one with: chamberwright new no-such.yaml',
  });
  expect(await run(['board.pdf'])).toMatchObject({
    code: 1,
    err: 'board.pdf is no job file: its name ends in .yaml, .yml or .json.',
  });
});

test.each([
  [[], 'Which job?'],
  [['a.yaml', 'b.yaml'], 'One job at a time.'],
  [['a.yaml', '--loud'], '--loud is not known here.'],
  [['a.yaml', '--port', 'eighty'], '--port takes a number from 0 to 65535.'],
])('%j is not understood', async (args, why) => {
  const { code, err } = await run(args);
  expect(code).toBe(2);
  expect(err.split('\n')[0]).toBe(why);
});
