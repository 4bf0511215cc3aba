import { z } from 'zod';
import { STEPS } from '../step.js';

/** How many events one delivery may hold; a longer queue comes in several. */
export const MOST_EVENTS = 200;

const count = z.int().min(0);
/** Block numbers, rows and batches: short words without spaces. */
const name = z.string().regex(/^[A-Za-z0-9._-]{1,40}$/);
/** Names and notes are one line or several, without other control characters. */
const text = (most: number) =>
  z
    .string()
    .max(most)
    .regex(/^[^\p{Cc}]*(?:[\n\t][^\p{Cc}]*)*$/u);

const happening = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('step'), block: name, step: z.enum(STEPS), done: z.boolean() }),
  z.strictObject({ kind: z.literal('note'), block: name, text: text(2000).min(1) }),
  z.strictObject({ kind: z.literal('photo'), block: name, photo: z.string().regex(/^[0-9a-f]{64}$/) }),
  z.strictObject({ kind: z.literal('trimmed'), block: name }),
  z.strictObject({
    kind: z.literal('timer'),
    batch: name,
    minutes: z
      .number()
      .min(0)
      .max(24 * 60),
  }),
]);

/** One event as a client sends it (see `ShopEvent`). */
export const eventSchema = z.strictObject({
  client: z.string().regex(/^[A-Za-z0-9-]{8,64}$/),
  seq: z.int().min(1),
  seen: count,
  plan: count,
  at: z.int(),
  who: text(60),
  via: z.enum(['page', 'command', 'csv']),
  what: happening,
});

/** A delivery: the client's clock and its events in order. The events are checked one by one, so that a bad one holds up no others. */
export const deliverySchema = z.strictObject({
  sentAt: z.int(),
  events: z.array(z.unknown()).max(MOST_EVENTS),
});

export const photoSchema = z.strictObject({ base64: z.base64() });
export const codeSchema = z.strictObject({ code: z.string().max(40) });
