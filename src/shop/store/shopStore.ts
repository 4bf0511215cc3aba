import type { KnownPlaces } from '../log/door.js';
import type { ShopEvent, StoredEvent } from '../log/event.js';
import type { ShopState } from '../log/state.js';
import type { TrackedBlock } from '../log/trackedBlock.js';
import type { Delivery } from './delivered.js';
import type { Photo } from './photo.js';
import type { PlanRecord } from './planRecord.js';
import type { Problem } from './problem.js';
import type { Content, TakenOver } from './content.js';

export type Done<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/**
 * Where a shop's log is kept. Every write is safe on the disk when it is done; a write that fails leaves everything as
 * it was. Reading throws a {@link StoreTrouble} where the store cannot be read.
 */
export interface ShopStore {
  /** The file or the address, for messages. */
  readonly path: string;
  /** Where the shop stands, as of the last {@link refresh}. */
  readonly state: ShopState;
  /** What was found in the log so far that makes no sense: nobody is shown it, and it stays where it is. */
  readonly passedOver: readonly string[];
  /** Takes in what was recorded since, here or by other programs, and gives back what was not given back before. */
  refresh(): Promise<readonly StoredEvent[]>;
  /** Calls back, where the store can tell, as soon as another program has recorded something. */
  whenChanged(told: () => void): void;
  /** Every event with a higher number, oldest first. */
  eventsAfter(number: number): Promise<readonly StoredEvent[]>;
  /**
   * Records what a client delivers: all of it or, where the store does not take it, nothing.
   *
   * @param clientNow what the client's clock shows as it delivers, ms
   * @param serverNow what ours shows, ms
   */
  append(events: readonly ShopEvent[], clientNow: number, serverNow: number): Promise<Done<readonly Delivery[]>>;
  /** Records the plan as it is now, if it is another than the newest recorded. */
  recordPlan(job: string, blocks: readonly TrackedBlock[], now: number): Promise<Done<PlanRecord>>;
  /** Every plan recorded, oldest first. */
  plans(): Promise<readonly PlanRecord[]>;
  /** The blocks and batches of every plan recorded. */
  places(): Promise<KnownPlaces>;
  addPhoto(photo: Photo, now: number): Promise<Done<string>>;
  photo(name: string): Promise<Photo | undefined>;
  addSession(token: string, now: number): Promise<Done<void>>;
  isSession(token: string, now: number): Promise<boolean>;
  /** Shuts every phone out until it is let in again. Gives how many there were. */
  forgetSessions(): Promise<Done<number>>;
  setting(name: string): Promise<string | undefined>;
  setSetting(name: string, value: string): Promise<Done<void>>;
  /** Everything, to be copied into another store. */
  content(): Promise<Content>;
  /** Adds what another store holds and this one does not. */
  takeOver(content: Content): Promise<Done<TakenOver>>;
  /** Whether the store itself finds everything sound. */
  isSound(): Promise<boolean>;
  close(): Promise<void>;
}

/** That a store could not be read, with what to do. */
export class StoreTrouble extends Error {
  constructor(readonly problem: Problem) {
    super(problem.what);
  }
}
