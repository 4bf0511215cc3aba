import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { chownSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir, userInfo } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import pg from 'pg';

/**
 * A PostgreSQL server of a test's own: Debian's programs, data of its own, a free port, a user that is not root (the
 * server refuses root).
 */
export interface Cluster {
  readonly port: number;
  /** Where its data is. */
  readonly folder: string;
  /** An address for `--store`, of a database of its own where a name is given. */
  readonly address: (database?: string) => string;
  readonly start: () => Promise<void>;
  /** `immediate` ends it as a power cut does (PostgreSQL 15 manual, pg_ctl). */
  readonly stop: (how: 'fast' | 'immediate') => Promise<void>;
  /** Runs SQL as the server's owner. */
  readonly sql: (text: string, database?: string) => Promise<pg.QueryResult>;
  /** Ends it and removes its data. */
  readonly remove: () => Promise<void>;
}

const OWNER = 'postgres';
const PASSWORD = 'lake-rescue';

/** @param where the folder to keep the data in; for a disk of a size of its own */
export async function cluster(where = tmpdir()): Promise<Cluster> {
  const folder = mkdtempSync(join(where, 'chamberwright-pg-'));
  const ids = ownerOfServers();
  if (ids) chownSync(folder, ids.uid, ids.gid);
  const data = join(folder, 'data');
  const run = (name: string, args: readonly string[]) =>
    execFileSync(program(name), [...args], {
      ...ids,
      cwd: folder,
      stdio: ['ignore', 'ignore', 'pipe'],
      env: { ...process.env, LC_ALL: 'C' },
    });
  mkdirSync(join(folder, 'socket'));
  if (ids) chownSync(join(folder, 'socket'), ids.uid, ids.gid);
  run('initdb', ['-D', data, '-U', OWNER, '--auth=trust', '--encoding=UTF8', '--no-sync']);
  const port = await freePort();
  let server: ChildProcess | undefined;
  const address = (database = 'postgres') => `postgres://${OWNER}@127.0.0.1:${port}/${database}`;
  const sql = async (text: string, database?: string) => {
    const client = new pg.Client({ connectionString: address(database) });
    client.on('error', () => undefined);
    await client.connect();
    try {
      return await client.query(text);
    } finally {
      await client.end();
    }
  };
  const start = async () => {
    const socket = join(folder, 'socket');
    const settings = [
      `port=${port}`,
      `unix_socket_directories=${socket}`,
      'listen_addresses=127.0.0.1',
      'max_connections=60',
    ];
    server = spawn(program('postgres'), ['-D', data, ...settings.flatMap((one) => ['-c', one])], {
      ...ids,
      cwd: folder,
      stdio: 'ignore',
    });
    // As long as it takes on a slow machine.
    for (let tries = 0; tries < 600; tries++) {
      try {
        await sql('SELECT 1');
        return;
      } catch (error) {
        if (server.exitCode !== null || tries === 599) throw error;
        await setTimeout(100);
      }
    }
  };
  const stop = async (how: 'fast' | 'immediate') => {
    if (!server || server.exitCode !== null) return;
    const ended = new Promise((resolve) => server!.once('exit', resolve));
    // PostgreSQL 15 manual, 19.5: SIGINT is a fast shutdown, SIGQUIT an immediate one.
    server.kill(how === 'fast' ? 'SIGINT' : 'SIGQUIT');
    await ended;
  };
  await start();
  return {
    port,
    folder,
    address,
    start,
    stop,
    sql,
    remove: async () => {
      await stop('immediate');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Makes a user who must give a password: his address and the password. */
export async function userWithPassword({
  sql,
  port,
  stop,
  start,
  folder,
}: Cluster): Promise<{ address: string; password: string }> {
  await sql(`CREATE ROLE crew LOGIN PASSWORD '${PASSWORD}'; GRANT ALL ON DATABASE postgres TO crew`);
  const { appendFileSync, readFileSync, writeFileSync } = await import('node:fs');
  const rules = join(folder, 'data', 'pg_hba.conf');
  const before = readFileSync(rules, 'utf8');
  writeFileSync(rules, `host all crew 127.0.0.1/32 scram-sha-256\n${before}`);
  appendFileSync(rules, '\n');
  await stop('fast');
  await start();
  return { address: `postgres://crew@127.0.0.1:${port}/postgres`, password: PASSWORD };
}

/** Debian keeps the programs of each version in a folder of its own. */
function program(name: string): string {
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : [];
  const found = versions.map((version) => join(debian, version, 'bin', name)).find((path) => existsSync(path));
  return found ?? name;
}

/** The user that servers run as where the tests run as root; nothing where they run as somebody else already. */
function ownerOfServers(): { uid: number; gid: number } | undefined {
  if (userInfo().uid !== 0) return undefined;
  const id = (what: string) => Number(execFileSync('id', [what, OWNER], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => resolve(port));
    });
  });
}
