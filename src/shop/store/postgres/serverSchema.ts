import type { ClientBase } from 'pg';
import { quoted } from './address.js';

/**
 * Each entry takes a board one version up; the version is the number of entries applied. Only ever add. `$` stands for
 * the board's schema.
 */
export const MIGRATIONS: readonly string[] = [
  `
  CREATE TABLE $.event (
    number   bigint PRIMARY KEY,
    client   text   NOT NULL,
    seq      bigint NOT NULL,
    seen     bigint NOT NULL,
    plan     bigint NOT NULL,
    at       bigint NOT NULL,
    who      text   NOT NULL,
    via      text   NOT NULL,
    what     text   NOT NULL,
    received bigint NOT NULL,
    happened bigint NOT NULL,
    UNIQUE (client, seq)
  );
  CREATE FUNCTION $.only_added() RETURNS trigger LANGUAGE plpgsql AS
    $body$ BEGIN RAISE EXCEPTION 'events are only ever added'; END $body$;
  CREATE TRIGGER event_is_kept BEFORE DELETE OR UPDATE OR TRUNCATE ON $.event EXECUTE FUNCTION $.only_added();
  CREATE TABLE $.plan (
    number   bigint PRIMARY KEY,
    recorded bigint NOT NULL,
    job      text   NOT NULL,
    blocks   text   NOT NULL
  );
  CREATE TABLE $.photo (
    name     text   PRIMARY KEY,
    type     text   NOT NULL,
    bytes    bytea  NOT NULL,
    received bigint NOT NULL
  );
  CREATE TABLE $.session (
    hash  text   PRIMARY KEY,
    began bigint NOT NULL,
    used  bigint NOT NULL
  );
  CREATE TABLE $.setting (
    name  text PRIMARY KEY,
    value text NOT NULL
  );
  -- The highest numbers ever given. Whoever writes holds the row until what it wrote can be read, so that numbers appear in their order.
  CREATE TABLE $.given (event bigint NOT NULL, plan bigint NOT NULL);
  INSERT INTO $.given VALUES (0, 0);
  `,
];

/**
 * Makes the board's schema, or brings it up to date, all of it or nothing.
 *
 * @returns what stands in the way, if anything does
 */
export async function prepared(client: ClientBase, schema: string): Promise<'newer' | 'foreign' | undefined> {
  const name = quoted(schema);
  await client.query('BEGIN');
  try {
    // Two programs that begin a board at the same time: one waits for the other.
    await client.query('SELECT pg_advisory_xact_lock(hashtext($1))', [schema]);
    const { rows: there } = await client.query<{ tables: number }>(
      'SELECT (SELECT count(*)::int FROM pg_class WHERE relnamespace = n.oid) AS tables FROM pg_namespace n WHERE nspname = $1',
      [schema],
    );
    const { rows: versions } = await client.query<{ found: boolean }>('SELECT to_regclass($1) IS NOT NULL AS found', [
      `${name}.version`,
    ]);
    const isOurs = versions[0]!.found;
    if (!isOurs && (there[0]?.tables ?? 0) > 0) return await refusing(client, 'foreign');
    if (!isOurs) {
      await client.query(`CREATE SCHEMA IF NOT EXISTS ${name}`);
      await client.query(`CREATE TABLE ${name}.version (version int NOT NULL); INSERT INTO ${name}.version VALUES (0)`);
    }
    const { rows } = await client.query<{ version: number }>(`SELECT version FROM ${name}.version`);
    const version = rows[0]?.version ?? 0;
    if (version > MIGRATIONS.length) return await refusing(client, 'newer');
    for (const migration of MIGRATIONS.slice(version)) await client.query(migration.replaceAll('$.', `${name}.`));
    if (version < MIGRATIONS.length) await client.query(`UPDATE ${name}.version SET version = ${MIGRATIONS.length}`);
    await client.query('COMMIT');
    return undefined;
  } catch (error) {
    await client.query('ROLLBACK').catch(() => undefined);
    throw error;
  }
}

async function refusing<T>(client: ClientBase, why: T): Promise<T> {
  await client.query('ROLLBACK');
  return why;
}
