import type Database from 'libsql';
import { statSync } from 'node:fs';
import type { ShopEvent, StoredEvent } from '../event.js';
import { NOTHING_YET, stateAfter, type ShopState } from '../state.js';
import type { TrackedBlock } from '../trackedBlock.js';
import { placesOf, type Places } from '../door.js';
import { logAfter, writeEvents, type Delivery } from './eventLog.js';
import { photoNamed, writePhoto, type Photo } from './photoShelf.js';
import { allPlans, newestPlan, planNumbered, writePlan, type PlanRecord } from './planLog.js';
import { problem, problemOf, type Problem } from './problem.js';
import { dropSessions, isSession, writeSession } from './sessionBook.js';
import { readSetting, writeSetting } from './setting.js';

export type Done<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** The open tracker file. Every write is on the disk when it returns; a write that fails leaves everything as it was. */
export class ShopStore {
  private current: ShopState = NOTHING_YET;
  /** Number of the last entry looked at. */
  private looked = 0;
  private readonly odd: string[] = [];
  private known: { readonly newest: number | undefined; readonly places: Places } | undefined;
  private readonly inode: number;

  constructor(
    private readonly db: Database.Database,
    readonly path: string,
  ) {
    this.inode = statSync(path).ino;
    this.refresh();
  }

  /** Where the shop stands, as of the last {@link refresh} or {@link append}. */
  get state(): ShopState {
    return this.current;
  }

  /** Takes in what other programs have recorded since, and gives back what was new. */
  refresh(): readonly StoredEvent[] {
    const { events, passedOver, last } = logAfter(this.db, this.looked);
    this.looked = last;
    this.odd.push(...passedOver);
    if (events.length > 0) this.current = stateAfter(this.current, events);
    return events;
  }

  /** What was found in the log so far that makes no sense: nobody is shown it, and it stays where it is. */
  get passedOver(): readonly string[] {
    return this.odd;
  }

  /** Every event from `number` on, oldest first. */
  eventsAfter(number: number): readonly StoredEvent[] {
    return logAfter(this.db, number).events;
  }

  /** The blocks and batches of every plan recorded here. */
  places(): Places {
    const newest = this.newestPlan()?.number;
    if (!this.known || this.known.newest !== newest) this.known = { newest, places: placesOf(allPlans(this.db)) };
    return this.known.places;
  }

  /**
   * Records what a client delivers: all of it or, where the disk does not take it, nothing.
   *
   * @param clientNow what the client's clock shows as it delivers, ms
   * @param serverNow what ours shows, ms
   */
  append(events: readonly ShopEvent[], clientNow: number, serverNow: number): Done<readonly Delivery[]> {
    return this.write(() => writeEvents(this.db, events, clientNow, serverNow));
  }

  /** Records the plan as it is now, if it is another than the newest recorded. Gives its number. */
  recordPlan(job: string, blocks: readonly TrackedBlock[], now: number): Done<PlanRecord> {
    return this.write(() => writePlan(this.db, job, blocks, now));
  }

  plan(number: number): PlanRecord | undefined {
    return planNumbered(this.db, number);
  }

  newestPlan(): PlanRecord | undefined {
    return newestPlan(this.db);
  }

  addPhoto(photo: Photo, now: number): Done<string> {
    return this.write(() => writePhoto(this.db, photo, now));
  }

  photo(name: string): Photo | undefined {
    return photoNamed(this.db, name);
  }

  addSession(token: string, now: number): Done<void> {
    return this.write(() => writeSession(this.db, token, now));
  }

  isSession(token: string, now: number): boolean {
    return isSession(this.db, token, now);
  }

  /** Shuts every phone out until it is let in again. Gives how many there were. */
  forgetSessions(): Done<number> {
    return this.write(() => dropSessions(this.db));
  }

  setting(name: string): string | undefined {
    return readSetting(this.db, name);
  }

  setSetting(name: string, value: string): Done<void> {
    return this.write(() => writeSetting(this.db, name, value));
  }

  /** Whether SQLite finds the whole file sound. */
  isSound(): boolean {
    const rows = this.db.pragma('integrity_check') as { integrity_check: string }[];
    return rows.length === 1 && rows[0]!.integrity_check === 'ok';
  }

  close(): void {
    this.db.close();
  }

  private write<T>(action: () => T): Done<T> {
    if (!this.isStillThere()) return { ok: false, problem: problem('moved', this.path) };
    try {
      this.db.exec('BEGIN IMMEDIATE');
      const value = action();
      this.db.exec('COMMIT');
      return { ok: true, value };
    } catch (error) {
      if (this.db.inTransaction) this.db.exec('ROLLBACK');
      return { ok: false, problem: problemOf(error, this.path) };
    }
  }

  /** A file that was moved or deleted can still be written to, but nobody would ever find it again. */
  private isStillThere(): boolean {
    return statSync(this.path, { throwIfNoEntry: false })?.ino === this.inode;
  }
}
