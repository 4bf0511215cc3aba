import pg from 'pg';
import type { Opened } from '../opened.js';
import { serverPlace } from './address.js';
import { passwordFor } from './password.js';
import { PostgresStore } from './postgresStore.js';
import { serverProblem, serverProblemOf } from './serverProblem.js';
import { prepared } from './serverSchema.js';

/** So many connections at most: one writes, the others read. */
const CONNECTIONS = 4;

/**
 * Whole numbers of 64 bits come as text unless told otherwise; ours are times in ms and counts, which a number holds
 * exactly.
 */
const types: pg.CustomTypesConfig = {
  getTypeParser: ((id: number, format?: 'text') =>
    id === pg.types.builtins.INT8 ? Number : pg.types.getTypeParser(id, format)) as typeof pg.types.getTypeParser,
};

/**
 * Opens a board's log on a PostgreSQL server, or begins it there.
 *
 * @param board the name of the board
 * @param tracker the path of the tracker file beside the job: what is rescued is written beside it
 */
export async function openServer(typed: string, board: string, tracker: string): Promise<Opened> {
  const place = serverPlace(typed, board);
  if ('problem' in place) return { ok: false, problem: place.problem };
  const { schema, shown } = place;
  const config = { ...place.config, types, password: passwordFor(place.door) };
  const pool = new pg.Pool({ ...config, max: CONNECTIONS });
  // A connection that breaks is replaced when one is needed. What was asked on it fails by itself; without these the
  // program would end.
  pool.on('error', () => undefined);
  pool.on('connect', (client) => client.on('error', () => undefined));
  try {
    const client = await pool.connect();
    let blocked: 'newer' | 'foreign' | undefined;
    try {
      blocked = await prepared(client, schema);
    } finally {
      client.release();
    }
    if (blocked) {
      await pool.end();
      return { ok: false, problem: serverProblem(blocked, shown) };
    }
    const store = new PostgresStore(pool, () => new pg.Client(config), { path: shown, schema, tracker });
    await store.refresh();
    await store.plans();
    return { ok: true, store, notices: store.passedOver };
  } catch (error) {
    await pool.end().catch(() => undefined);
    return { ok: false, problem: serverProblemOf(error, shown) };
  }
}
