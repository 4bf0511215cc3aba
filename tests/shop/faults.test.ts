import Database from 'libsql';
import {
  existsSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seeded } from '../../src/block/nest/seeded.js';
import { openFile } from '../../src/shop/store/file/openFile.js';
import type { Opened } from '../../src/shop/store/opened.js';
import { openServer } from '../../src/shop/store/postgres/openServer.js';
import type { ShopStore } from '../../src/shop/store/shopStore.js';
import { built } from './built.js';
import { event, NOON, rescueBlocks, step } from './rescueBoard.js';
import { running, send } from './running.js';
import { serverKind } from './store/kinds.js';
import { closedForGood, databaseOf, scratchFolder } from './store/scratch.js';

/** Trials of each fault; as many more as one likes: npm run shop-faults -- 100. */
const TRIALS = Number(process.env['FAULTS'] ?? 3);
/** Where the table goes that the README shows. */
const TABLE = process.env['FAULTS_TABLE'];
const SEED = 20261126;

const folder = scratchFolder();
const server = serverKind();
beforeAll(async () => void (await built()), 120_000);

/** One board in one trial, with what was told to it and what it acknowledged. */
class Board {
  readonly told = new Set<string>();
  readonly acknowledged = new Set<string>();
  /** What a builder was told when it was opened. */
  readonly said: string[] = [];
  private seq = 0;

  constructor(
    readonly random: () => number,
    readonly reopen: () => Promise<Opened>,
  ) {}

  upTo(most: number): number {
    return 1 + Math.floor(this.random() * most);
  }

  next(client = 'phone-one', count = this.upTo(4)) {
    return Array.from({ length: count }, () => event({ client, seq: ++this.seq, what: step('R2-07', 'cut') }));
  }

  /** Delivers so many times; what is refused is not sent again. */
  async work(store: ShopStore, times = this.upTo(15), client?: string): Promise<void> {
    for (let i = 0; i < times; i++) await this.deliver(store, this.next(client));
  }

  async deliver(store: ShopStore, events: ReturnType<Board['next']>): Promise<string> {
    for (const { client, seq } of events) this.told.add(`${client} ${seq}`);
    const done = await store.append(events, NOON, NOON);
    if (!done.ok) return done.problem.kind;
    for (const { client, seq } of events) this.acknowledged.add(`${client} ${seq}`);
    return 'acknowledged';
  }

  async open(): Promise<ShopStore> {
    const opened = await this.reopen();
    if (!opened.ok) throw new Error(JSON.stringify(opened.problem));
    this.said.push(...opened.notices);
    return opened.store;
  }
}

interface Counts {
  acknowledged: number;
  /** Acknowledged, gone, and nobody told. */
  lost: number;
  /** Gone from the disk itself, and the builder told that the file was damaged and to compare. */
  toldLost: number;
  /** Shown, and never told by anybody. */
  invented: number;
}

/** What happens to the board between its first entries and its last; it may be left open or closed. */
type Fault = (board: Board, path: string) => Promise<void>;

/** A tracker in use: opened, with some entries. */
async function inUse(board: Board): Promise<ShopStore> {
  const store = await board.open();
  await store.recordPlan('Rescue 12', rescueBlocks(), NOON);
  await board.work(store);
  await store.refresh();
  return store;
}

/** Starts the tracker as a program of its own and kills it while three phones send to it. */
async function killedAtWork(board: Board, tracker: string): Promise<void> {
  const child = await running(tracker);
  let killed = false;
  const pressing = ['phone-one', 'phone-two', 'phone-three'].map(async (client) => {
    while (!killed) {
      const events = board.next(client);
      for (const { seq } of events) board.told.add(`${client} ${seq}`);
      try {
        const { status } = await send(child, events);
        if (status === 200) for (const { seq } of events) board.acknowledged.add(`${client} ${seq}`);
      } catch {
        return;
      }
    }
  });
  const enough = board.upTo(12);
  while (board.acknowledged.size < enough && child.process.exitCode === null) await setTimeout(1);
  await setTimeout(board.random() * 10);
  killed = true;
  await child.stop('SIGKILL');
  await Promise.all(pressing);
}

const faultsOfFiles: Readonly<Record<string, Fault>> = {
  'the tracker is killed while three phones send': (board, path) => killedAtWork(board, path),
  'its file is moved away in use, and put back or not': async (board, path) => {
    const store = await inUse(board);
    renameSync(path, `${path}.elsewhere`);
    await board.work(store, 3);
    await closedForGood(store);
    if (board.random() < 0.5) renameSync(`${path}.elsewhere`, path);
  },
  'the job is renamed, and its tracker as the message says': async (board, path) => {
    const store = await inUse(board);
    await closedForGood(store);
    renameSync(path, path.replace('.tracker.db', '-before.tracker.db'));
    const anew = await board.open();
    expect(board.said.join()).toContain('A tracker without a job lies here');
    await closedForGood(anew);
    rmSync(path);
    renameSync(path.replace('.tracker.db', '-before.tracker.db'), path);
  },
  'its file is deleted in use': async (board, path) => {
    const store = await inUse(board);
    rmSync(path);
    await board.work(store, 3);
    await closedForGood(store);
  },
  'another tracker’s file is put in its place in use': async (board, path) => {
    const store = await inUse(board);
    const other = await openFile(`${path}.other.tracker.db`);
    if (!other.ok) throw new Error(other.problem.what);
    await board.work(other.store, board.upTo(9), 'phone-other');
    await closedForGood(other.store);
    renameSync(`${path}.other.tracker.db`, path);
    await board.work(store, 3);
    await closedForGood(store);
  },
  'its file is cut short, in use or not': async (board, path) => {
    const store = await inUse(board);
    const isOpen = board.random() < 0.5;
    if (!isOpen) await closedForGood(store);
    truncateSync(path, Math.floor(board.random() * statSync(path).size));
    if (isOpen) await board.work(store, 3);
    if (isOpen) await closedForGood(store);
  },
  'bytes of its file change': async (board, path) => {
    const store = await inUse(board);
    await closedForGood(store);
    const bytes = readFileSync(path);
    const count = [1, 16, 512, 4096][Math.floor(board.random() * 4)]!;
    const from = Math.floor(board.random() * (bytes.length - count));
    for (let i = 0; i < count; i++) bytes[from + i] = Math.floor(board.random() * 256);
    writeFileSync(path, bytes);
  },
  'the disk fills up, and has room again': async (board) => {
    const store = await inUse(board);
    const [{ page_count: pages }] = databaseOf(store).pragma('page_count') as [{ page_count: number }];
    databaseOf(store).pragma(`max_page_count = ${pages + Math.floor(board.random() * 4)}`);
    // Until the limit of SQLite's own, which gives the same error as the disk.
    for (let i = 0; i < 400; i++) if ((await board.deliver(store, board.next('phone-one', 5))) === 'full') break;
    databaseOf(store).pragma('max_page_count = 100000');
    await board.work(store, 2);
    await closedForGood(store);
  },
  'another program locks its file': async (board, path) => {
    const store = await inUse(board);
    const other = new Database(path);
    other.exec('BEGIN IMMEDIATE');
    const refused = board.next();
    expect(await board.deliver(store, refused)).toBe('busy');
    other.exec(board.random() < 0.5 ? 'COMMIT' : 'ROLLBACK');
    other.close();
    expect(await board.deliver(store, refused)).toBe('acknowledged');
    await closedForGood(store);
  },
  'two trackers use its file at the same time': async (board) => {
    const [one, two] = [await inUse(board), await board.open()];
    await Promise.all([board.work(one, 10, 'phone-one'), board.work(two, 10, 'phone-two')]);
    await closedForGood(one);
    await closedForGood(two);
  },
  'a newer program has written it': async (board, path) => {
    await closedForGood(await inUse(board));
    const set = (version: number, also: string) => {
      const db = new Database(path);
      db.exec(`${also}; PRAGMA user_version = ${version}`);
      db.close();
    };
    const db = new Database(path);
    const { user_version: version } = db.prepare('PRAGMA user_version').get([]) as { user_version: number };
    db.close();
    set(version + board.upTo(9), 'CREATE TABLE later (x)');
    const before = readFileSync(path);
    expect(await board.reopen()).toMatchObject({ ok: false, problem: { kind: 'newer' } });
    expect(readFileSync(path).equals(before)).toBe(true);
    set(version, 'DROP TABLE later');
  },
  'its file lies on a network drive, and two programs want it': async (board, path) => {
    const there = await openFile(path, () => 'NFS');
    if (!there.ok) throw new Error(there.problem.what);
    await board.work(there.store);
    expect(await openFile(path, () => 'NFS')).toMatchObject({ ok: false, problem: { kind: 'busy' } });
    await board.work(there.store);
    await closedForGood(there.store);
  },
};

const faultsOfServers: Readonly<Record<string, Fault>> = {
  'a tracker of a board on a PostgreSQL server is killed while three phones send': (board, path) =>
    killedAtWork(board, `${server.cluster().address()}#${boardIn(path)}`),
  'the PostgreSQL server is killed while it writes, and started again': async (board) => {
    const store = await inUse(board);
    let stopped = false;
    const pressing = (async () => {
      while (!stopped) await board.work(store, 1);
    })();
    await setTimeout(board.random() * 30);
    await server.cluster().stop('immediate');
    stopped = true;
    await pressing;
    await server.cluster().start();
    await store.close();
  },
  'connections to it are cut while they write': async (board) => {
    const store = await inUse(board);
    const cut = server
      .cluster()
      .sql("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'chamberwright'");
    await board.work(store, 10);
    await cut;
    await store.close();
  },
  'two workshops record at the same time': async (board) => {
    const [one, two] = [await inUse(board), await board.open()];
    await Promise.all([board.work(one, 10, 'phone-one'), board.work(two, 10, 'phone-two')]);
    await one.close();
    await two.close();
  },
  'the board is deleted there in use, and the rescued file copied back': async (board, path) => {
    const store = await inUse(board);
    await server.cluster().sql(`DROP SCHEMA "chamberwright ${boardIn(path)}" CASCADE`);
    const refused = await store.append(board.next(), NOON, NOON);
    await store.close();
    const rescued = refused.ok ? '' : (/rescued as (.*)$/m.exec(refused.problem.where)?.[1] ?? '');
    const [again, source] = [await board.open(), await openFile(rescued)];
    if (!source.ok) throw new Error(source.problem.what);
    expect((await again.takeOver(await source.store.content())).ok).toBe(true);
    await closedForGood(source.store);
    await again.close();
  },
};

const boardIn = (path: string) => basename(path, '.tracker.db');

const rows: string[] = [];
afterAll(() => {
  if (TABLE) writeFileSync(TABLE, `${rows.join('\n')}\n`);
});

describe('what happens in a shop', () => {
  it.each(Object.entries(faultsOfFiles))(
    '%s: nothing acknowledged is lost in silence, nothing is shown that was not told',
    async (name, fault) => {
      await tried(name, fault, 'file');
    },
    3_600_000,
  );

  it.each(Object.entries(faultsOfServers))(
    '%s: nothing acknowledged is lost, nothing is shown that was not told',
    async (name, fault) => {
      await tried(name, fault, 'server');
    },
    3_600_000,
  );
});

async function tried(name: string, fault: Fault, kind: 'file' | 'server'): Promise<void> {
  const counts: Counts = { acknowledged: 0, lost: 0, toldLost: 0, invented: 0 };
  const random = seeded(SEED + name.length);
  for (let trial = 0; trial < TRIALS; trial++) {
    const place = mkdtempSync(join(folder, 'trial-'));
    const path = join(place, `board-${name.length}-${trial}.tracker.db`);
    const board = new Board(random, () =>
      kind === 'file' ? openFile(path) : openServer(server.cluster().address(), boardIn(path), path),
    );
    await fault(board, path);
    // The builder starts it again, and works on.
    const store = await board.open();
    await board.work(store, 2);
    const events = await store.eventsAfter(0);
    const there = new Set(events.map(({ client, seq }) => `${client.replace(/-again$/, '')} ${seq}`));
    const gone = [...board.acknowledged].filter((one) => !there.has(one)).length;
    const toldLost = /was damaged|was empty/.test(board.said.join()) ? gone : 0;
    counts.acknowledged += board.acknowledged.size;
    counts.toldLost += toldLost;
    counts.lost += gone - toldLost;
    counts.invented += [...there].filter((one) => !board.told.has(one)).length;
    expect(await store.isSound(), `${name}, trial ${trial}`).toBe(true);
    await (kind === 'file' ? closedForGood(store) : store.close());
    if (existsSync(place)) rmSync(place, { recursive: true, force: true });
  }
  rows.push(
    `| ${name} | ${TRIALS} | ${counts.acknowledged} | ${counts.toldLost} | ${counts.lost} | ${counts.invented} |`,
  );
  expect(counts.acknowledged, 'or this proves nothing').toBeGreaterThan(TRIALS);
  expect({ lost: counts.lost, invented: counts.invented }, name).toEqual({ lost: 0, invented: 0 });
}
