import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterAll } from 'vitest';
import { openFile } from '../../../src/shop/store/file/openFile.js';
import type Database from 'libsql';
import type { FileStore } from '../../../src/shop/store/file/fileStore.js';
import type { ShopStore } from '../../../src/shop/store/shopStore.js';

/**
 * A folder of its own for one test file, gone afterwards; in memory where there is such a place and the test writes
 * very often.
 */
export function scratchFolder(inMemory = false): string {
  const place = inMemory && existsSync('/dev/shm') ? '/dev/shm' : tmpdir();
  const folder = mkdtempSync(join(place, 'chamberwright-shop-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Opens a store that must open. */
export async function opened(path: string): Promise<ShopStore> {
  const result = await openFile(path);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.store;
}

/**
 * Closes a store as the end of its program would: the library holds the file until its statements are collected as
 * garbage.
 */
export async function closedForGood(store: ShopStore): Promise<void> {
  await store.close();
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  for (let i = 0; i < 3; i++) {
    collect();
    await setTimeout(5);
  }
}

/** The database under a store that is a file: to see or set in it what the store itself never would. */
export function databaseOf(store: ShopStore): Database.Database {
  return (store as FileStore)['db'];
}
