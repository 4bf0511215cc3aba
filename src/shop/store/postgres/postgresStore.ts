import { hostname } from 'node:os';
import type { Client, Pool, PoolClient } from 'pg';
import { placesOf, type KnownPlaces } from '../../log/door.js';
import type { ShopEvent, StoredEvent } from '../../log/event.js';
import type { ShopState } from '../../log/state.js';
import type { TrackedBlock } from '../../log/trackedBlock.js';
import type { Content, TakenOver } from '../content.js';
import { delivered, type Delivery } from '../delivered.js';
import { EVENT_COLUMNS, fieldsOf, keyOf, logPart, type EventFields } from '../eventRow.js';
import { writeRescue } from '../file/rescue.js';
import { joined } from '../joined.js';
import { LogSoFar } from '../logSoFar.js';
import { photoName, type Photo } from '../photo.js';
import { isSamePlan, PLAN_COLUMNS, planOfRow, type PlanFields, type PlanRecord } from '../planRecord.js';
import type { Problem } from '../problem.js';
import { hashOf, SESSION_LASTS } from '../session.js';
import { StoreTrouble, type Done, type ShopStore } from '../shopStore.js';
import { quoted } from './address.js';
import { serverProblem, serverProblemOf } from './serverProblem.js';

interface Waiting {
  readonly deliver: (there: MutableLog) => readonly Delivery[];
  readonly done: (done: Done<readonly Delivery[]>) => void;
  readonly failed: (error: unknown) => void;
  readonly events: readonly ShopEvent[];
}

/** The log within one transaction, with what was added to it so far. */
interface MutableLog {
  readonly known: Map<string, EventFields>;
  readonly stored: StoredEvent[];
  last: number;
}

/** Where a board's log is on its server, and where what is rescued goes. */
export interface BoardThere {
  readonly path: string;
  readonly schema: string;
  readonly tracker: string;
}

interface Newest {
  readonly number: number;
  readonly key: string;
}

/** After what time a lost connection that tells of changes is tried again, ms. */
const AGAIN = 1000;
/** So many events are written by one statement, and photos read at a time. */
const AT_ONCE = 1000;

/**
 * A board's log on a PostgreSQL server: several trackers in several workshops may keep the same one at the same time.
 */
export class PostgresStore implements ShopStore {
  readonly path: string;
  private readonly log = new LogSoFar();
  private readonly table: (name: string) => string;
  private planList: readonly PlanRecord[] = [];
  private known: { readonly newest: number; readonly places: KnownPlaces } | undefined;
  private waiting: Waiting[] = [];
  private writer: Promise<void> | undefined;
  private reader: Promise<void> = Promise.resolve();
  private listener: Client | undefined;
  private again: NodeJS.Timeout | undefined;
  private rescuedTo: string | undefined;
  private isClosed = false;

  /** @param connection makes the one on which changes are told */
  constructor(
    private readonly pool: Pool,
    private readonly connection: () => Client,
    private readonly there: BoardThere,
  ) {
    this.path = there.path;
    this.table = (name) => `${quoted(there.schema)}.${name}`;
  }

  get state(): ShopState {
    return this.log.state;
  }

  get passedOver(): readonly string[] {
    return this.log.passedOver;
  }

  async refresh(): Promise<readonly StoredEvent[]> {
    await this.takeIn();
    return this.log.news();
  }

  whenChanged(told: () => void): void {
    void this.listen(told);
  }

  async eventsAfter(number: number): Promise<readonly StoredEvent[]> {
    await this.takeIn();
    return this.log.after(number);
  }

  /** Deliveries that come while others are written are written together, in one transaction. */
  append(events: readonly ShopEvent[], clientNow: number, serverNow: number): Promise<Done<readonly Delivery[]>> {
    const deliver = (there: MutableLog): readonly Delivery[] => {
      const keyed = (client: string, seq: number) => there.known.get(`${client} ${seq}`);
      const { deliveries, stored } = delivered(events, { keyed, last: there.last }, clientNow, serverNow);
      for (const event of stored) there.known.set(`${event.client} ${event.seq}`, fieldsOf(event));
      there.stored.push(...stored);
      there.last += stored.length;
      return deliveries;
    };
    return new Promise((done, failed) => {
      this.waiting.push({ deliver, done, failed, events });
      this.writer ??= this.writeWaiting();
    });
  }

  async recordPlan(job: string, blocks: readonly TrackedBlock[], now: number): Promise<Done<PlanRecord>> {
    const done = await this.write(async (client, given) => {
      const newest = (await this.plansFrom(client, 'ORDER BY number DESC LIMIT 1'))[0];
      if (newest && isSamePlan(newest, { job, blocks })) return newest;
      const plan = { number: given.plan + 1, recorded: now, job, blocks };
      await this.writePlan(client, plan);
      return plan;
    });
    if (done.ok) await this.plans();
    return done;
  }

  async plans(): Promise<readonly PlanRecord[]> {
    return this.read(async (client) => {
      const { rows } = await client.query<{ newest: number | null }>(
        `SELECT max(number) AS newest FROM ${this.table('plan')}`,
      );
      if ((rows[0]!.newest ?? 0) !== (this.planList.at(-1)?.number ?? 0))
        this.planList = await this.plansFrom(client, 'ORDER BY number');
      return this.planList;
    });
  }

  async places(): Promise<KnownPlaces> {
    const plans = await this.plans();
    const newest = plans.at(-1)?.number ?? 0;
    if (this.known?.newest !== newest) this.known = { newest, places: placesOf(plans) };
    return this.known.places;
  }

  async addPhoto(photo: Photo, now: number): Promise<Done<string>> {
    return this.write(async (client) => {
      await this.writePhoto(client, photo, now);
      return photoName(photo.bytes);
    });
  }

  async photo(name: string): Promise<Photo | undefined> {
    return this.read(async (client) => {
      const { rows } = await client.query<Photo>(`SELECT type, bytes FROM ${this.table('photo')} WHERE name = $1`, [
        name,
      ]);
      const [photo] = rows;
      return photo && photoName(photo.bytes) === name ? photo : undefined;
    });
  }

  async addSession(token: string, now: number): Promise<Done<void>> {
    return this.write(async (client) => {
      await client.query(`DELETE FROM ${this.table('session')} WHERE used < $1`, [now - SESSION_LASTS]);
      await client.query(`INSERT INTO ${this.table('session')} VALUES ($1, $2, $2)`, [hashOf(token), now]);
    });
  }

  async isSession(token: string, now: number): Promise<boolean> {
    return this.read(async (client) => {
      const { rows } = await client.query<{ used: number }>(
        `SELECT used FROM ${this.table('session')} WHERE hash = $1`,
        [hashOf(token)],
      );
      const [row] = rows;
      if (row === undefined || row.used < now - SESSION_LASTS) return false;
      // Best effort: a full disk must not shut a phone out.
      if (row.used < now - SESSION_LASTS / 100)
        await client
          .query(`UPDATE ${this.table('session')} SET used = $1 WHERE hash = $2`, [now, hashOf(token)])
          .catch(() => undefined);
      return true;
    });
  }

  async forgetSessions(): Promise<Done<number>> {
    return this.write(async (client) => (await client.query(`DELETE FROM ${this.table('session')}`)).rowCount ?? 0);
  }

  /** Of this machine: each workshop has its own address and port. */
  async setting(name: string): Promise<string | undefined> {
    return this.read(async (client) => {
      const { rows } = await client.query<{ value: string }>(
        `SELECT value FROM ${this.table('setting')} WHERE name = $1`,
        [ofThisMachine(name)],
      );
      return rows[0]?.value;
    });
  }

  async setSetting(name: string, value: string): Promise<Done<void>> {
    return this.write((client) => this.writeSetting(client, ofThisMachine(name), value));
  }

  async content(): Promise<Content> {
    await this.takeIn();
    return this.read((client) => this.all(client));
  }

  async takeOver(content: Content): Promise<Done<TakenOver>> {
    return this.write(async (client, given) => {
      const rows = await rowsOf<EventFields>(client, `SELECT ${EVENT_COLUMNS} FROM ${this.table('event')}`);
      const known = new Map(rows.map((row) => [keyOf(row), row]));
      const numbers = new Set(rows.map(([number]) => number));
      const { events, plans, missing } = joined(
        {
          keyed: (name, seq) => known.get(`${name} ${seq}`),
          has: (number) => numbers.has(number),
          last: given.event,
          plans: await this.plansFrom(client, 'ORDER BY number'),
          nextPlan: given.plan + 1,
        },
        content,
      );
      for (const plan of plans) await this.writePlan(client, plan);
      await this.writeEvents(client, events);
      let photos = 0;
      for (const photo of content.photos) photos += await this.writePhoto(client, photo, photo.received);
      for (const row of content.sessions)
        await client.query(`INSERT INTO ${this.table('session')} VALUES ($1, $2, $3) ON CONFLICT DO NOTHING`, [...row]);
      for (const row of content.settings)
        await client.query(`INSERT INTO ${this.table('setting')} VALUES ($1, $2) ON CONFLICT DO NOTHING`, [...row]);
      // The numbers of lost entries are not given again.
      if (given.event === 0) await this.give(client, 'event', content.highest);
      return { events: events.length, photos, missing };
    });
  }

  async isSound(): Promise<boolean> {
    return this.read(async (client) => {
      const { rows } = await client.query<{ sound: boolean }>(
        `SELECT (SELECT coalesce(max(number), 0) FROM ${this.table('event')}) <= event
            AND (SELECT coalesce(max(number), 0) FROM ${this.table('plan')}) <= plan AS sound FROM ${this.table('given')}`,
      );
      return rows.length === 1 && rows[0]!.sound;
    });
  }

  async close(): Promise<void> {
    if (this.isClosed) return;
    this.isClosed = true;
    clearTimeout(this.again);
    await this.writer;
    await this.listener?.end().catch(() => undefined);
    await this.pool.end();
  }

  /** One after another: the same entries are never taken in twice. */
  private takeIn(): Promise<void> {
    const next = this.reader.then(() => this.read((client) => this.takeInNow(client)));
    this.reader = next.catch(() => undefined);
    return next;
  }

  private async takeInNow(client: PoolClient): Promise<void> {
    const text = `SELECT ${EVENT_COLUMNS} FROM ${this.table('event')} WHERE number >= $1 ORDER BY number`;
    const known = this.newest();
    const rows = await rowsOf<EventFields>(client, text, [known.number]);
    this.mustBeOurs(rows[0], known);
    this.log.take(logPart(known.number > 0 ? rows.slice(1) : rows));
  }

  /** The newest entry known now: others may be taken in while the server is asked about it. */
  private newest(): Newest {
    return { number: this.log.last, key: this.log.lastKey };
  }

  /**
   * Where the newest entry known is gone or another, the log is another: an older copy was put back, or somebody
   * else's.
   */
  private mustBeOurs(found: EventFields | undefined, { number, key }: Newest): void {
    if (number > 0 && (found?.[0] !== number || keyOf(found) !== key))
      throw new StoreTrouble(serverProblem('moved', this.path));
  }

  private async listen(told: () => void): Promise<void> {
    if (this.isClosed) return;
    const client = this.connection();
    this.listener = client;
    client.on('notification', told);
    client.on('error', () => undefined);
    client.on('end', () => {
      if (!this.isClosed) this.again = setTimeout(() => void this.listen(told), AGAIN);
    });
    try {
      await client.connect();
      await client.query(`LISTEN ${quoted(this.there.schema)}`);
      // What came while nobody listened.
      told();
    } catch {
      // Ends the connection, which is then tried again.
      await client.end().catch(() => undefined);
    }
  }

  private async writeWaiting(): Promise<void> {
    // Those that come at the same moment go together.
    await new Promise(setImmediate);
    while (this.waiting.length > 0) {
      const waiting = this.waiting;
      this.waiting = [];
      try {
        await this.deliverEach(waiting);
      } catch (error) {
        for (const { failed } of waiting) failed(error);
      }
    }
    // At once with the last look: whoever comes after it finds nobody writing, and writes.
    this.writer = undefined;
  }

  private async deliverEach(waiting: readonly Waiting[]): Promise<void> {
    const together = await this.deliver(waiting);
    // One that the server does not take must not hold up the others; one that is not there takes none.
    const alone = !together.ok && waiting.length > 1 && together.problem.kind !== 'away';
    for (const [i, one] of waiting.entries()) {
      if (together.ok) one.done({ ok: true, value: together.value[i]! });
      else if (!alone) one.done(together);
      else {
        const done = await this.deliver([one]);
        one.done(done.ok ? { ok: true, value: done.value[0]! } : done);
      }
    }
  }

  private deliver(waiting: readonly Waiting[]): Promise<Done<readonly (readonly Delivery[])[]>> {
    return this.write(async (client, given) => {
      const keys = waiting.flatMap(({ events }) => events);
      const known = this.newest();
      const rows = await rowsOf<EventFields>(
        client,
        `SELECT ${EVENT_COLUMNS} FROM ${this.table('event')}
          WHERE (client, seq) IN (SELECT * FROM unnest($1::text[], $2::bigint[])) OR number = $3`,
        [keys.map(({ client: name }) => name), keys.map(({ seq }) => seq), known.number],
      );
      this.mustBeOurs(
        rows.find(([number]) => number === known.number),
        known,
      );
      const log = { known: new Map(rows.map((row) => [keyOf(row), row])), stored: [], last: given.event };
      const deliveries = waiting.map(({ deliver }) => deliver(log));
      await this.writeEvents(client, log.stored);
      return deliveries;
    });
  }

  private async writeEvents(client: PoolClient, events: readonly StoredEvent[]): Promise<void> {
    const kinds = [
      'bigint',
      'text',
      'bigint',
      'bigint',
      'bigint',
      'bigint',
      'text',
      'text',
      'text',
      'bigint',
      'bigint',
    ];
    for (let from = 0; from < events.length; from += AT_ONCE) {
      const rows = events.slice(from, from + AT_ONCE).map(fieldsOf);
      const columns = kinds.map((_, i) => rows.map((row) => row[i]));
      await client.query(
        `INSERT INTO ${this.table('event')} (${EVENT_COLUMNS})
          SELECT * FROM unnest(${kinds.map((kind, i) => `$${i + 1}::${kind}[]`).join(', ')})`,
        columns,
      );
    }
    if (events.length > 0) await this.give(client, 'event', Math.max(...events.map(({ number }) => number)));
  }

  private async writePlan(client: PoolClient, { number, recorded, job, blocks }: PlanRecord): Promise<void> {
    await client.query(`INSERT INTO ${this.table('plan')} (${PLAN_COLUMNS}) VALUES ($1, $2, $3, $4)`, [
      number,
      recorded,
      job,
      JSON.stringify(blocks),
    ]);
    await this.give(client, 'plan', number);
  }

  private async writePhoto(client: PoolClient, { type, bytes }: Photo, now: number): Promise<number> {
    const { rowCount } = await client.query(
      `INSERT INTO ${this.table('photo')} VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING`,
      [photoName(bytes), type, Buffer.from(bytes), now],
    );
    return rowCount ?? 0;
  }

  private async writeSetting(client: PoolClient, name: string, value: string): Promise<void> {
    await client.query(
      `INSERT INTO ${this.table('setting')} VALUES ($1, $2) ON CONFLICT (name) DO UPDATE SET value = excluded.value`,
      [name, value],
    );
  }

  /** Numbers up to this one are given and never again. */
  private async give(client: PoolClient, what: 'event' | 'plan', number: number): Promise<void> {
    await client.query(`UPDATE ${this.table('given')} SET ${what} = greatest(${what}, $1)`, [number]);
  }

  private async plansFrom(client: PoolClient, order: string): Promise<PlanRecord[]> {
    return (await rowsOf<PlanFields>(client, `SELECT ${PLAN_COLUMNS} FROM ${this.table('plan')} ${order}`)).map(
      planOfRow,
    );
  }

  private async read<T>(action: (client: PoolClient) => Promise<T>): Promise<T> {
    let client: PoolClient | undefined;
    try {
      client = await this.pool.connect();
      const value = await action(client);
      client.release();
      return value;
    } catch (error) {
      client?.release(true);
      throw new StoreTrouble(this.problemBehind(error));
    }
  }

  /** All of it or nothing. `given` are the highest numbers given so far; nobody else gives any until this is done. */
  private async write<T>(
    action: (client: PoolClient, given: { readonly event: number; readonly plan: number }) => Promise<T>,
  ): Promise<Done<T>> {
    let client: PoolClient | undefined;
    try {
      client = await this.pool.connect();
      await client.query('BEGIN');
      const { rows } = await client.query<{ event: number; plan: number }>(
        `SELECT event, plan FROM ${this.table('given')} FOR UPDATE`,
      );
      if (!rows[0]) throw new StoreTrouble(serverProblem('moved', this.path));
      const value = await action(client, rows[0]);
      await client.query(`NOTIFY ${quoted(this.there.schema)}`);
      await client.query('COMMIT');
      client.release();
      return { ok: true, value };
    } catch (error) {
      // The connection is given up, and with it whatever was begun on it.
      client?.release(true);
      return { ok: false, problem: this.problemBehind(error) };
    }
  }

  private problemBehind(error: unknown): Problem {
    const found = error instanceof StoreTrouble ? error.problem : serverProblemOf(error, this.path);
    if (found.kind !== 'moved') return found;
    const rescued = this.rescue();
    return rescued === undefined ? found : { ...found, where: `${found.where}\n  rescued as ${rescued}` };
  }

  /** Writes the events and plans known of a board that is gone into a file beside the job, once. */
  private rescue(): string | undefined {
    if (this.rescuedTo !== undefined || this.log.events.length === 0) return this.rescuedTo;
    const { last, events } = this.log;
    try {
      this.rescuedTo = writeRescue(this.there.tracker.replace(/(\.tracker\.db)?$/, '.from-server$1'), {
        events,
        plans: this.planList,
        photos: [],
        sessions: [],
        settings: [],
        highest: last,
      });
    } catch {
      return undefined;
    }
    return this.rescuedTo;
  }

  private async all(client: PoolClient): Promise<Content> {
    const names = await client.query<{ name: string }>(
      `SELECT name FROM ${this.table('photo')} ORDER BY received, name`,
    );
    const photos: Content['photos'][number][] = [];
    for (const { name } of names.rows) {
      const { rows } = await client.query<Content['photos'][number]>(
        `SELECT type, bytes, received FROM ${this.table('photo')} WHERE name = $1`,
        [name],
      );
      photos.push(...rows);
    }
    const list = <T extends readonly unknown[]>(columns: string, table: string): Promise<T[]> =>
      rowsOf<T>(client, `SELECT ${columns} FROM ${this.table(table)}`);
    const [given] = await list<[number]>('event', 'given');
    return {
      events: this.log.events,
      plans: await this.plansFrom(client, 'ORDER BY number'),
      photos,
      sessions: await list<[string, number, number]>('hash, began, used', 'session'),
      settings: await list<[string, string]>('name, value', 'setting'),
      highest: Math.max(this.log.last, given?.[0] ?? 0),
    };
  }
}

async function rowsOf<T extends readonly unknown[]>(
  client: PoolClient,
  text: string,
  values: readonly unknown[] = [],
): Promise<T[]> {
  return (await client.query({ text, values: [...values], rowMode: 'array' })).rows as unknown as T[];
}

const ofThisMachine = (name: string): string => `${hostname()} ${name}`;
