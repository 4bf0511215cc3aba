import type Database from 'libsql';
import { statSync } from 'node:fs';
import { placesOf, type KnownPlaces } from '../../log/door.js';
import type { ShopEvent, StoredEvent } from '../../log/event.js';
import type { ShopState } from '../../log/state.js';
import type { TrackedBlock } from '../../log/trackedBlock.js';
import { eventNumbered, lastNumber, logAfter, writeEvents } from './eventLog.js';
import { keyOf } from '../eventRow.js';
import type { Delivery } from '../delivered.js';
import { LogSoFar } from '../logSoFar.js';
import { photoNamed, photoNames, writePhoto } from './photoShelf.js';
import type { Photo } from '../photo.js';
import { allPlans, insertPlan, newestPlanNumber, nextPlanNumber } from './planLog.js';
import { isSamePlan, type PlanRecord } from '../planRecord.js';
import type { Problem } from '../problem.js';
import { isOutOfPlace, problem, problemOf } from './fileProblem.js';
import type { Content, TakenOver } from '../content.js';
import { writeRescue } from './rescue.js';
import { rowsOf } from './rowsOf.js';
import { allSessions, dropSessions, isSession, writeSession } from './sessionBook.js';
import { readSetting, writeSetting } from './setting.js';
import { StoreTrouble, type Done, type ShopStore } from '../shopStore.js';
import { takeOver } from './takeOver.js';

interface Waiting {
  readonly deliver: () => readonly Delivery[];
  readonly done: (done: Done<readonly Delivery[]>) => void;
  readonly failed: (error: unknown) => void;
}

/** The tracker file beside a job. */
export class FileStore implements ShopStore {
  private readonly log = new LogSoFar();
  private planList: readonly PlanRecord[];
  private known: { readonly newest: number; readonly places: KnownPlaces } | undefined;
  private readonly file: { readonly dev: number; readonly ino: number };
  private waiting: Waiting[] = [];
  private rescuedTo: string | undefined;
  private isClosed = false;

  /** @throws Damaged where a row is not as it was written, SQLite's error where the file cannot be read */
  constructor(
    private readonly db: Database.Database,
    readonly path: string,
  ) {
    this.file = statSync(path);
    this.log.take(logAfter(db, 0));
    this.log.news();
    this.planList = allPlans(db);
  }

  get state(): ShopState {
    return this.log.state;
  }

  get passedOver(): readonly string[] {
    return this.log.passedOver;
  }

  async refresh(): Promise<readonly StoredEvent[]> {
    this.takeIn();
    return this.log.news();
  }

  /** Nobody tells; other programs' entries are found by {@link refresh}. */
  whenChanged(): void {
    return;
  }

  async eventsAfter(number: number): Promise<readonly StoredEvent[]> {
    this.takeIn();
    return this.log.after(number);
  }

  /** Deliveries that come together are written together: the disk takes its time for each write, however short. */
  append(events: readonly ShopEvent[], clientNow: number, serverNow: number): Promise<Done<readonly Delivery[]>> {
    return new Promise((done, failed) => {
      if (this.waiting.length === 0) setImmediate(() => this.writeWaiting());
      this.waiting.push({ deliver: () => writeEvents(this.db, events, clientNow, serverNow), done, failed });
    });
  }

  async recordPlan(job: string, blocks: readonly TrackedBlock[], now: number): Promise<Done<PlanRecord>> {
    const done = this.write(() => {
      const newest = allPlans(this.db).at(-1);
      if (newest && isSamePlan(newest, { job, blocks })) return newest;
      const plan = { number: nextPlanNumber(this.db), recorded: now, job, blocks };
      insertPlan(this.db, plan);
      return plan;
    });
    if (done.ok) await this.plans();
    return done;
  }

  async plans(): Promise<readonly PlanRecord[]> {
    return this.read(() => {
      if (newestPlanNumber(this.db) !== (this.planList.at(-1)?.number ?? 0)) this.planList = allPlans(this.db);
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
    return this.write(() => writePhoto(this.db, photo, now).name);
  }

  async photo(name: string): Promise<Photo | undefined> {
    return this.read(() => photoNamed(this.db, name));
  }

  async addSession(token: string, now: number): Promise<Done<void>> {
    return this.write(() => writeSession(this.db, token, now));
  }

  async isSession(token: string, now: number): Promise<boolean> {
    return this.read(() => isSession(this.db, token, now));
  }

  async forgetSessions(): Promise<Done<number>> {
    return this.write(() => dropSessions(this.db));
  }

  async setting(name: string): Promise<string | undefined> {
    return this.read(() => readSetting(this.db, name));
  }

  async setSetting(name: string, value: string): Promise<Done<void>> {
    return this.write(() => writeSetting(this.db, name, value));
  }

  async content(): Promise<Content> {
    this.takeIn();
    await this.plans();
    return this.read(() => this.all());
  }

  async takeOver(content: Content): Promise<Done<TakenOver>> {
    return this.write(() => takeOver(this.db, content));
  }

  async isSound(): Promise<boolean> {
    const rows = this.db.pragma('integrity_check') as { integrity_check: string }[];
    return rows.length === 1 && rows[0]!.integrity_check === 'ok';
  }

  async close(): Promise<void> {
    if (this.waiting.length > 0) this.writeWaiting();
    if (!this.isClosed) this.db.close();
    this.isClosed = true;
  }

  private takeIn(): void {
    this.read(() => this.log.take(logAfter(this.db, this.log.last)));
  }

  private writeWaiting(): void {
    const waiting = this.waiting;
    this.waiting = [];
    if (waiting.length === 0) return;
    try {
      const together = this.write(() => waiting.map(({ deliver }) => deliver()));
      // One that the disk does not take must not hold up the others.
      for (const [i, { deliver, done }] of waiting.entries()) {
        if (together.ok) done({ ok: true, value: together.value[i]! });
        else done(waiting.length === 1 ? together : this.write(deliver));
      }
    } catch (error) {
      for (const { failed } of waiting) failed(error);
    }
  }

  private read<T>(action: () => T): T {
    try {
      this.mustBeOurs();
      return action();
    } catch (error) {
      throw new StoreTrouble(this.problemBehind(error));
    }
  }

  private write<T>(action: () => T): Done<T> {
    try {
      this.mustBeOurs();
      this.db.exec('BEGIN IMMEDIATE');
      const { last, lastKey } = this.log;
      const there = last > 0 ? eventNumbered(this.db, last) : undefined;
      if (last > 0 && (!there || keyOf(there) !== lastKey)) throw new StoreTrouble(problem('moved', this.path));
      const value = action();
      this.db.exec('COMMIT');
      return { ok: true, value };
    } catch (error) {
      if (this.db.inTransaction) this.db.exec('ROLLBACK');
      return { ok: false, problem: this.problemBehind(error) };
    }
  }

  /** A file that was moved or deleted can still be written to, but nobody would ever find it again. */
  private mustBeOurs(): void {
    const now = statSync(this.path, { throwIfNoEntry: false });
    if (now?.ino !== this.file.ino || now.dev !== this.file.dev) throw new StoreTrouble(problem('moved', this.path));
  }

  private problemBehind(error: unknown): Problem {
    const found =
      error instanceof StoreTrouble
        ? error.problem
        : isOutOfPlace(error)
          ? problem('moved', this.path)
          : problemOf(error, this.path);
    if (found.kind !== 'moved' && found.kind !== 'damaged') return found;
    const rescued = this.rescue();
    return rescued === undefined ? found : { ...found, where: `${found.where}\n  rescued as ${rescued}` };
  }

  /** Writes what is known of a file that was taken away into another beside its place, once. */
  private rescue(): string | undefined {
    if (this.rescuedTo !== undefined || this.log.events.length === 0) return this.rescuedTo;
    try {
      this.rescuedTo = writeRescue(this.path, this.all());
    } catch {
      // The folder is gone or full as well. The file lies wherever it was moved to, with everything that was
      // acknowledged.
      return undefined;
    }
    return this.rescuedTo;
  }

  /** Everything; of what is not in memory, as much as can still be read. */
  private all(): Content {
    const readable = <T>(read: () => readonly T[]): readonly T[] => {
      try {
        return read();
      } catch {
        return [];
      }
    };
    return {
      events: this.log.events,
      plans: this.planList,
      photos: readable(() =>
        photoNames(this.db).flatMap(([name, received]) => {
          const photo = photoNamed(this.db, name);
          return photo ? [{ ...photo, received }] : [];
        }),
      ),
      sessions: readable(() => allSessions(this.db)),
      settings: readable(() => rowsOf(this.db, 'name, value', 'setting') as [string, string][]),
      highest: Math.max(this.log.last, ...readable(() => [lastNumber(this.db)])),
    };
  }
}
