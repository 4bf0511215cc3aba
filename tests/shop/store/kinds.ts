import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { openServer } from '../../../src/shop/store/postgres/openServer.js';
import type { ShopStore } from '../../../src/shop/store/shopStore.js';
import { cluster, type Cluster } from './postgres/cluster.js';
import { opened, scratchFolder } from './scratch.js';

/** One of the stores that a tracker can be kept in. */
export interface StoreKind {
  readonly name: string;
  /** Opens the board of that name. */
  readonly open: (board: string) => Promise<ShopStore>;
  /** Everything kept of a board, as text. */
  readonly dump: (board: string) => Promise<string>;
}

/** A tracker file, in a folder of its own. */
export function fileKind(): StoreKind {
  const folder = scratchFolder();
  const path = (board: string) => join(folder, `${board}.tracker.db`);
  return {
    name: 'a file',
    open: (board) => opened(path(board)),
    dump: async (board) => (await import('node:fs')).readFileSync(path(board), 'latin1'),
  };
}

/** A PostgreSQL server of its own, started before the tests and removed after them. */
export function serverKind(): StoreKind & { readonly cluster: () => Cluster; readonly folder: string } {
  const folder = scratchFolder();
  let running: Cluster | undefined;
  beforeAll(async () => {
    running = await cluster();
  }, 120_000);
  afterAll(async () => running?.remove());
  return {
    name: 'a PostgreSQL server',
    cluster: () => running!,
    folder,
    open: (board) => openedThere(running!.address(), board, folder),
    dump: async (board) => {
      const tables = ['event', 'plan', 'photo', 'session', 'setting'];
      const rows = await Promise.all(
        tables.map((table) => running!.sql(`SELECT * FROM "chamberwright ${board}".${table}`)),
      );
      return JSON.stringify(rows.map((one) => one.rows as unknown));
    },
  };
}

/** Opens a board on a server that must let it be opened. */
export async function openedThere(address: string, board: string, folder: string): Promise<ShopStore> {
  const result = await openServer(address, board, join(folder, `${board}.tracker.db`));
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.store;
}
