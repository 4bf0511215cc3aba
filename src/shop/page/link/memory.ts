import type { Happening, ShopEvent } from '../../log/event.js';

/** An event that waits to be delivered, and the photo that goes with it. */
export interface Unsent {
  /** Its place in the queue. */
  readonly key: number;
  readonly event: ShopEvent;
  /** To be sent before the event, which then names it. */
  readonly photo?: Blob;
}

/** An event the server did not understand. It is kept here, and said so. */
export interface Refused {
  readonly event: ShopEvent;
  readonly why: string;
}

/** What an event must know besides what happened. */
export type Setting = Pick<ShopEvent, 'seen' | 'plan' | 'who'>;

/** What the phone remembers through a reload and a closed browser. */
export interface Memory {
  /** False where the browser forgets it all with the page. */
  readonly lasting: boolean;
  /** Numbers the event and puts it at the end of the queue; it is kept once this settles. */
  readonly add: (what: Happening, setting: Setting, photo?: Blob) => Promise<void>;
  readonly unsent: () => Promise<readonly Unsent[]>;
  /** Puts the photo's name into its event. */
  readonly namePhoto: (key: number, photo: string) => Promise<void>;
  /** Takes delivered events off the queue. */
  readonly delivered: (keys: readonly number[]) => Promise<void>;
  /** Takes an event off the queue that will never be accepted, and keeps it apart. */
  readonly refuse: (key: number, why: string) => Promise<void>;
  readonly refused: () => Promise<readonly Refused[]>;
  /** Gives everything in the queue new numbers under a new name: the old ones were used before for something else. */
  readonly renumber: () => Promise<void>;
  readonly read: (name: 'token' | 'who' | 'minutes') => Promise<string | undefined>;
  readonly write: (name: 'token' | 'who' | 'minutes', value: string | undefined) => Promise<void>;
}

interface Client {
  readonly id: string;
  readonly next: number;
}

const QUEUE = 'queue';
const REFUSED = 'refused';
const SELF = 'self';

/** Opens what this browser remembers of the tracker, or a memory that lasts as long as the page. */
export async function openMemory(): Promise<Memory> {
  try {
    return memoryIn(await openDatabase(), true);
  } catch {
    return memoryIn(undefined, false);
  }
}

function memoryIn(db: IDBDatabase | undefined, lasting: boolean): Memory {
  const stores = db ? databaseStores(db) : pageStores();
  return {
    lasting,
    add: (what, setting, photo) =>
      stores.change(async (self, queue) => {
        const client = ((await self.get('client')) as Client | undefined) ?? newClient();
        const event: ShopEvent = { client: client.id, seq: client.next, at: Date.now(), via: 'page', what, ...setting };
        await queue.add(photo ? { event, photo } : { event });
        await self.put('client', { ...client, next: client.next + 1 });
      }),
    unsent: () => stores.look(async (_, queue) => (await queue.all()) as Unsent[]),
    namePhoto: (key, photo) =>
      stores.change(async (_, queue) => {
        const waiting = ((await queue.all()) as Unsent[]).find((one) => one.key === key);
        if (!waiting || waiting.event.what.kind !== 'photo') return;
        await queue.put(key, { event: { ...waiting.event, what: { ...waiting.event.what, photo } } });
      }),
    delivered: (keys) =>
      stores.change(async (_, queue) => {
        for (const key of keys) await queue.remove(key);
      }),
    refuse: (key, why) =>
      stores.change(async (_, queue, refused) => {
        const waiting = ((await queue.all()) as Unsent[]).find((one) => one.key === key);
        if (!waiting) return;
        await refused.add({ event: waiting.event, why });
        await queue.remove(key);
      }),
    refused: () => stores.look(async (_, __, refused) => (await refused.all()) as unknown as Refused[]),
    renumber: () =>
      stores.change(async (self, queue) => {
        const client = newClient();
        const waiting = (await queue.all()) as Unsent[];
        for (const [i, { key, ...rest }] of waiting.entries()) {
          await queue.put(key, { ...rest, event: { ...rest.event, client: client.id, seq: i + 1 } });
        }
        await self.put('client', { ...client, next: waiting.length + 1 });
      }),
    read: (name) => stores.look(async (self) => (await self.get(name)) as string | undefined),
    write: (name, value) => stores.change((self) => self.put(name, value)),
  };
}

/** A name nobody else has. Not `randomUUID`: over plain HTTP browsers do not give it. */
function newClient(): Client {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return { id: `page-${Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')}`, next: 1 };
}

interface Named {
  readonly get: (name: string) => Promise<unknown>;
  readonly put: (name: string, value: unknown) => Promise<void>;
}

interface Listed {
  readonly all: () => Promise<unknown[]>;
  readonly add: (value: object) => Promise<void>;
  readonly put: (key: number, value: object) => Promise<void>;
  readonly remove: (key: number) => Promise<void>;
}

type Work<T> = (self: Named, queue: Listed, refused: Listed) => Promise<T>;

interface Stores {
  /** All of it or nothing, one after the other, between tabs too. */
  readonly change: (work: Work<void>) => Promise<void>;
  readonly look: <T>(work: Work<T>) => Promise<T>;
}

function openDatabase(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('shop', 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore(QUEUE, { autoIncrement: true, keyPath: 'key' });
      request.result.createObjectStore(REFUSED, { autoIncrement: true, keyPath: 'key' });
      request.result.createObjectStore(SELF);
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('no IndexedDB'));
  });
}

function databaseStores(db: IDBDatabase): Stores {
  const run = async <T>(mode: IDBTransactionMode, work: Work<T>): Promise<T> => {
    const transaction = db.transaction([SELF, QUEUE, REFUSED], mode, { durability: 'strict' });
    const ended = new Promise<void>((resolve, reject) => {
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error ?? new Error('the browser kept nothing'));
    });
    const self = transaction.objectStore(SELF);
    const named: Named = {
      get: (name) => settled(self.get(name)),
      put: async (name, value) => {
        if (value === undefined) await settled(self.delete(name));
        else await settled(self.put(value, name));
      },
    };
    const listed = (store: IDBObjectStore): Listed => ({
      all: () => settled(store.getAll()),
      add: async (value) => void (await settled(store.add(value))),
      put: async (key, value) => void (await settled(store.put({ ...value, key }))),
      remove: async (key) => void (await settled(store.delete(key))),
    });
    const result = await work(named, listed(transaction.objectStore(QUEUE)), listed(transaction.objectStore(REFUSED)));
    await ended;
    return result;
  };
  return { change: (work) => run('readwrite', work), look: (work) => run('readonly', work) };
}

function settled<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('the browser kept nothing'));
  });
}

/** The same where the browser has no store: one piece of work after the other, kept in the page alone. */
function pageStores(): Stores {
  const self = new Map<string, unknown>();
  const listed = (): Listed => {
    const rows = new Map<number, object>();
    let next = 1;
    return {
      all: async () => [...rows].map(([key, value]) => ({ ...value, key })),
      add: async (value) => void rows.set(next++, value),
      put: async (key, value) => void rows.set(key, value),
      remove: async (key) => void rows.delete(key),
    };
  };
  const named: Named = {
    get: async (name) => self.get(name),
    put: async (name, value) => void self.set(name, value),
  };
  const [queue, refused] = [listed(), listed()];
  let last: Promise<unknown> = Promise.resolve();
  const run = <T>(work: Work<T>): Promise<T> => {
    const next = last.then(() => work(named, queue, refused));
    last = next.catch(() => undefined);
    return next;
  };
  return { change: run, look: run };
}
