import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { replaceFile, writeNew } from '../../src/disk/replace.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'cw-'));
});
const LONG = 'board: 11 ft 4 in\n'.repeat(10_000);

test('a new file is there whole, and nothing beside it', async () => {
  expect(await writeNew(join(folder, 'tarn.yaml'), LONG)).toBe(true);
  expect(readFileSync(join(folder, 'tarn.yaml'), 'utf8')).toBe(LONG);
  expect(readdirSync(folder)).toEqual(['tarn.yaml']);
});

test('a new file never takes the place of a file, a folder or a link that leads nowhere', async () => {
  writeFileSync(join(folder, 'mine.yaml'), 'mine');
  symlinkSync('nowhere', join(folder, 'link.yaml'));
  const there = readdirSync(folder);
  for (const name of there) expect(await writeNew(join(folder, name), LONG)).toBe(false);
  expect(await writeNew(folder, LONG)).toBe(false);
  expect(readFileSync(join(folder, 'mine.yaml'), 'utf8')).toBe('mine');
  expect(readlinkSync(join(folder, 'link.yaml'))).toBe('nowhere');
  expect(readdirSync(folder)).toEqual(there);
});

test('a file that is replaced keeps its rights, and stays as it was where the new one cannot be made', async () => {
  const file = join(folder, 'tarn.yaml');
  writeFileSync(file, 'old');
  chmodSync(file, 0o600);
  await replaceFile(file, LONG);
  expect(readFileSync(file, 'utf8')).toBe(LONG);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  await expect(replaceFile(file, 'new', join(folder, 'no-such', 'fresh'))).rejects.toThrow('ENOENT');
  expect(readFileSync(file, 'utf8')).toBe(LONG);
  expect(readdirSync(folder)).toEqual(['tarn.yaml']);
});
