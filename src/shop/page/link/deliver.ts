import { call } from './serverCalls.js';
import type { Memory, Unsent } from './memory.js';

/** How a delivery ended. */
export interface Delivered {
  /** The server does not know this phone any more. */
  readonly shutOut: boolean;
  readonly trouble?: string;
}

interface Outcome {
  readonly client?: string;
  readonly seq?: number;
  readonly index?: number;
  readonly became: 'stored' | 'again' | 'clash' | 'refused';
  readonly why?: string;
}

/** At most so many in one message, as the server takes them. */
const MOST = 100;

/**
 * Delivers the queue, oldest first. An event leaves the queue only when the server has said that it is on its disk;
 * what is sent twice because an answer was lost counts once there. Ends at the first silence; whoever calls tries again
 * later.
 */
export async function deliver(memory: Memory, token: string): Promise<Delivered> {
  for (;;) {
    const queue = await memory.unsent();
    if (queue.length === 0) return { shutOut: false };
    const photo = queue.slice(0, MOST).findIndex(needsPhoto);
    if (photo === 0) {
      const ended = await sendPhoto(queue[0]!, memory, token);
      if (ended) return ended;
      continue;
    }
    // Up to the first photo that has to go before its event.
    const events = queue.slice(0, photo < 0 ? MOST : photo);
    const sent = await call<{ outcomes: readonly Outcome[] }>('/api/events', token, {
      sentAt: Date.now(),
      events: events.map(({ event }) => event),
    });
    if (sent.kind !== 'answer') return ended(sent);
    await settle(events, sent.value.outcomes, memory);
  }
}

async function settle(events: readonly Unsent[], outcomes: readonly Outcome[], memory: Memory): Promise<void> {
  const keyOf = ({ client, seq, index }: Outcome) =>
    index === undefined
      ? events.find(({ event }) => event.client === client && event.seq === seq)?.key
      : events[index]?.key;
  const done = outcomes.filter(({ became }) => became === 'stored' || became === 'again').map(keyOf);
  await memory.delivered(done.filter((key) => key !== undefined));
  for (const outcome of outcomes) {
    const key = keyOf(outcome);
    if (outcome.became === 'refused' && key !== undefined) await memory.refuse(key, outcome.why ?? '');
  }
  if (outcomes.some(({ became }) => became === 'clash')) await memory.renumber();
}

async function sendPhoto({ key, photo }: Unsent, memory: Memory, token: string): Promise<Delivered | undefined> {
  const sent = await call<{ photo: string }>('/api/photos', token, { base64: await base64Of(photo!) });
  if (sent.kind === 'answer') {
    await memory.namePhoto(key, sent.value.photo);
    return undefined;
  }
  if (sent.kind === 'refusal' && (sent.status === 400 || sent.status === 413)) {
    await memory.refuse(key, sent.why);
    return undefined;
  }
  return ended(sent);
}

function ended(sent: { kind: 'silence' } | { kind: 'refusal'; status: number; why: string }): Delivered {
  if (sent.kind === 'silence') return { shutOut: false };
  return sent.status === 401 ? { shutOut: true } : { shutOut: false, trouble: sent.why };
}

function needsPhoto({ photo }: Unsent): boolean {
  return photo !== undefined;
}

async function base64Of(photo: Blob): Promise<string> {
  const bytes = new Uint8Array(await photo.arrayBuffer());
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(text);
}
