import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterAll } from 'vitest';
import { openStore } from '../../../src/shop/store/openStore.js';
import type { ShopStore } from '../../../src/shop/store/shopStore.js';

/** A folder of its own for one test file, gone afterwards. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'chamberwright-shop-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Opens a store that must open. */
export function opened(path: string): ShopStore {
  const result = openStore(path);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.store;
}

/** Closes a store as the end of its program would: the library holds the file until its statements are collected as garbage. */
export async function closedForGood(store: ShopStore): Promise<void> {
  store.close();
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  for (let i = 0; i < 3; i++) {
    collect();
    await setTimeout(5);
  }
}
