import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { called } from '../../cli/called.js';

const SCAN = resolve('samples', 'scan');

test('measures beside a board that is a mesh are refused: walls are proved against the mesh alone', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cw-'));
  copyFileSync(join(SCAN, 'shore-watch.ply'), join(folder, 'shore-watch.ply'));
  const job = readFileSync(join(SCAN, 'shore-watch.yaml'), 'utf8');
  const file = join(folder, 'board.yaml');
  writeFileSync(file, `${job}\nshaped:\n  - {at: 1000 mm, thickness: 90 mm}\n`);
  const { code, err } = await called(['check', file]);
  expect(code).toBe(2);
  expect(err).toContain('shaped: measures after shaping do not go with a board that is a mesh');
}, 120_000);
