import type { ServerResponse } from 'node:http';
import type { StoredEvent } from '../log/event.js';
import type { Pace } from '../report/pace.js';
import { beginStream } from '../../serve/answer.js';

/** A listener further behind than this is told to read the whole state instead. */
export const MOST_MISSED = 1000;
/**
 * A listener that does not take what it is sent is dropped beyond this many waiting bytes; it comes back and catches
 * up.
 */
const MOST_WAITING = 1_000_000;

/** The phones that listen for changes, as server-sent events (WHATWG HTML, section 9.2). */
export class Changes {
  /** Each with the question whether it is still let in. */
  private readonly listeners = new Map<ServerResponse, () => Promise<boolean>>();

  /** Answers with the events missed and goes on with each new one. */
  listen(response: ServerResponse, missed: readonly StoredEvent[], isLetIn: () => Promise<boolean>): void {
    beginStream(response);
    response.write('retry: 1000\n\n');
    if (missed.length > MOST_MISSED) response.write(message('reload', {}));
    else for (const event of missed) response.write(eventMessage(event));
    this.listeners.set(response, isLetIn);
    response.on('close', () => this.listeners.delete(response));
  }

  /** Tells everybody. */
  announce(events: readonly StoredEvent[]): void {
    for (const event of events) this.toAll(eventMessage(event));
  }

  /** Tells everybody to read the whole state again: the plan has changed. */
  announceReload(): void {
    this.toAll(message('reload', {}));
  }

  /** A sign of life, so that a phone notices a dead connection, with the pace of the work. */
  async beat(pace: () => Promise<Pace>): Promise<void> {
    if (this.listeners.size === 0) return;
    const its = await pace();
    this.toAll(message('beat', { now: Date.now(), pace: its }));
  }

  /** Hangs up on those who were shut out since they began to listen. */
  async dropShutOut(): Promise<void> {
    for (const [listener, isLetIn] of this.listeners) if (!(await isLetIn())) listener.end();
  }

  close(): void {
    for (const listener of this.listeners.keys()) listener.end();
  }

  private toAll(text: string): void {
    for (const listener of this.listeners.keys()) {
      if (listener.writableLength > MOST_WAITING) listener.destroy();
      else listener.write(text);
    }
  }
}

function eventMessage(event: StoredEvent): string {
  return `id: ${event.number}\n${message('happened', event)}`;
}

function message(name: string, data: unknown): string {
  return `event: ${name}\ndata: ${JSON.stringify(data)}\n\n`;
}
