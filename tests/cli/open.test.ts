import { mkdtemp, writeFile } from 'node:fs/promises';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openWith } from '../../src/cli/open.js';

async function run(args: readonly string[], pageFolder = tmpdir()) {
  const out: string[] = [];
  const err: string[] = [];
  const browsed: string[] = [];
  const code = await openWith(pageFolder, (link) => browsed.push(link)).run(args, {
    out: (line) => out.push(line),
    err: (line) => err.push(line),
    isTerminal: false,
    stopped: () => Promise.resolve(),
    ask: () => Promise.resolve(undefined),
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
    code: 2,
    err: 'no-such.yaml: there is no such file or folder → name a job file, or begin one with: chamberwright new no-such.yaml',
  });
  expect(await run(['board.pdf'])).toMatchObject({
    code: 2,
    err: "board.pdf: its name is no job file's → a name that ends in .yaml, .yml or .json",
  });
});

test('a page that is not built and a port that is taken are said with what to do', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'open-'));
  const job = join(folder, 'heron.yaml');
  await writeFile(job, 'job: Heron\n');
  expect(await run([job], join(folder, 'bench'))).toMatchObject({
    code: 2,
    err: 'page: it is not built (bench is missing) → npm run build',
  });
  const taken = createServer();
  await new Promise<void>((listening) => taken.listen(0, '127.0.0.1', listening));
  const { port } = taken.address() as AddressInfo;
  const { code, err } = await run([job, '--port', String(port)]);
  expect(code).toBe(2);
  expect(err).toMatch(/^page: it cannot be served: .* → choose another --port$/);
  taken.close();
});

test.each([
  [[], 'FILE: the name of the file is missing → name it'],
  [['a.yaml', 'b.yaml'], 'b.yaml: one file too many → name one file'],
  [['a.yaml', '--loud'], expect.stringMatching(/^--loud: there is no such option → one of --port, --no-browser$/)],
  [['a.yaml', '--port', 'eighty'], '--port: it takes a number from 0 to 65535 → a number, or leave it out'],
])('%j is not understood', async (args, why) => {
  const { code, err } = await run(args);
  expect(code).toBe(2);
  expect(err.split('\n')[0]).toEqual(why);
});
