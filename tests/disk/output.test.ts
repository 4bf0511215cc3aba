import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { writeTogether, type Output } from '../../src/disk/output.js';
import type * as Replace from '../../src/disk/replace.js';

/** A file that a viewer holds open, as one may on Windows: nothing takes its place. */
let held: string | undefined;
vi.mock('../../src/disk/replace.js', async (original) => {
  const real = await original<typeof Replace>();
  const takePlace = (fresh: string, file: string): void => {
    if (held !== undefined && file.endsWith(held)) throw Object.assign(new Error('EPERM'), { code: 'EPERM' });
    real.takePlace(fresh, file);
  };
  return { ...real, takePlace };
});

const into = (folder: string): Output => ({
  folder,
  by: 'papers',
  job: 'tarn',
  state: 'one',
  inputs: [],
  earlier: 'removed',
});
const writing = (folder: string, text: string) =>
  writeTogether(into(folder), async (stage) => {
    for (const name of ['papers.pdf', 'book.pdf', 'look.pdf']) await stage.put(name, text);
  });

test('of a file that is held open its own name is told, and the same again puts all in place', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cw-'));
  expect(await writing(folder, 'old')).toMatchObject({ ok: true });
  held = 'book.pdf';
  const put = await writing(folder, 'new');
  expect(put).toMatchObject({ ok: false, findings: [{ where: join(folder, 'book.pdf') }] });
  held = undefined;
  expect(await writing(folder, 'new')).toMatchObject({ ok: true });
  for (const name of ['papers.pdf', 'book.pdf', 'look.pdf'])
    expect(readFileSync(join(folder, name), 'utf8')).toBe('new');
});

test('folders are made where there are none, and taken away again where nothing came into them', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cw-'));
  expect(await writing(join(folder, 'a', 'b'), 'new')).toMatchObject({ ok: true });
  expect(readdirSync(join(folder, 'a', 'b'))).toContain('papers.pdf');
  writeFileSync(join(folder, 'file'), '');
  const under = await writing(join(folder, 'file', 'b'), 'new');
  expect(under).toMatchObject({ ok: false, findings: [{ what: 'a file stands where a folder must be' }] });
  const full = Object.assign(new Error('ENOSPC'), { code: 'ENOSPC' });
  const put = await writeTogether(into(join(folder, 'c', 'd')), () => Promise.reject(full));
  expect(put).toMatchObject({ ok: false, findings: [{ what: 'the disk is full' }] });
  expect(readdirSync(folder).toSorted()).toEqual(['a', 'file']);
});

test.runIf(process.platform === 'linux')('a folder that takes no other is told of, and not waited for', async () => {
  expect(await writing('/proc/x', 'new')).toMatchObject({ ok: false, findings: [{ where: '/proc/x' }] });
});
