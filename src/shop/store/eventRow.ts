import { LAST_TIME, type Happening, type ShopEvent, type StoredEvent } from '../log/event.js';
import { storedSchema } from '../log/eventSchema.js';

/** A stretch of the log. */
export interface LogPart {
  /** Oldest first. */
  readonly events: readonly StoredEvent[];
  /** What was found there and makes no sense, so that nobody is shown it: which entry, and what is wrong with it. */
  readonly passedOver: readonly string[];
  /**
   * Number of the last entry looked at, and who numbered it how: another entry in its place, and the log is another.
   */
  readonly last: number;
  readonly lastKey: string;
}

/** A row of the log: number, client, seq, seen, plan, at, who, via, what as JSON, received, happened. */
export type EventFields = readonly [
  number,
  string,
  number,
  number,
  number,
  number,
  string,
  string,
  string,
  number,
  number,
];

export const EVENT_COLUMNS = 'number, client, seq, seen, plan, at, who, via, what, received, happened';
/** The events that rows of the log, from wherever they were kept, come to. */
export function logPart(rows: readonly EventFields[]): LogPart {
  const reading = new Reading();
  for (const row of rows) reading.take(row);
  return reading;
}

/** A log while it is read, row by row. */
export class Reading implements LogPart {
  readonly events: StoredEvent[] = [];
  readonly passedOver: string[] = [];
  private newest: EventFields | undefined;
  // The same few things happen again and again: each is read once.
  private readonly read = new Map<string, Happening | undefined>();

  get last(): number {
    return this.newest?.[0] ?? 0;
  }

  get lastKey(): string {
    return this.newest ? keyOf(this.newest) : '';
  }

  take(row: EventFields): void {
    const event = fromRow(row, this.read);
    if (typeof event === 'string') this.passedOver.push(event);
    else this.events.push(event);
    this.newest = row;
  }
}

export function isSame(row: EventFields, event: ShopEvent): boolean {
  return row[5] === event.at && row[6] === event.who && row[8] === JSON.stringify(event.what);
}

/** What names an event for good. */
export function keyOf([, client, seq]: EventFields): string {
  return `${client} ${seq}`;
}

export function fieldsOf(event: StoredEvent): EventFields {
  const { number, client, seq, seen, plan, at, who, via, what, received, happened } = event;
  return [number, client, seq, seen, plan, at, who, via, JSON.stringify(what), received, happened];
}

function fromRow(row: EventFields, read: Map<string, Happening | undefined>): StoredEvent | string {
  const [number, client, seq, seen, plan, at, who, via, text, received, happened] = row;
  if (!read.has(text)) read.set(text, happeningIn(text));
  const what = read.get(text);
  if (!what) return `Entry ${number} is passed over: it says nothing that can be understood (${text.slice(0, 80)}).`;
  if (!isTime(happened) || !isTime(received)) return `Entry ${number} is passed over: its time is none (${happened}).`;
  return { number, client, seq, seen, plan, at, who, via: via as ShopEvent['via'], what, received, happened };
}

function happeningIn(text: string): Happening | undefined {
  try {
    return storedSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

function isTime(ms: number): boolean {
  return ms >= 0 && ms <= LAST_TIME;
}
