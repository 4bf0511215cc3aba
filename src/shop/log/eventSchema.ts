import { z } from 'zod';
import { LAST_TIME, MOST_NAME, MOST_NOTE } from './event.js';
import { STEPS } from './step.js';

/** How many events one delivery may hold; a longer queue comes in several. */
export const MOST_EVENTS = 200;

const count = z.int().min(0);
const time = z.int().min(0).max(LAST_TIME);
/** Block numbers, rows and batches: short words without spaces. */
const name = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$/);
/**
 * Half of a letter, as a name has at its end that was cut after so many letters: no store keeps it as it is (The
 * Unicode Standard, D75).
 */
const HALF = /\p{Surrogate}/gu;
/** Names and notes are one line or several, without other control characters. */
const text = (most: number) =>
  z
    .string()
    .max(most)
    .overwrite((words) => words.replace(HALF, '\ufffd'))
    .regex(/^[^\p{Cc}]*(?:[\n\t][^\p{Cc}]*)*$/u, 'control characters are not taken');

const happening = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('step'), block: name, step: z.enum(STEPS), done: z.boolean() }),
  z.strictObject({ kind: z.literal('note'), block: name, text: text(MOST_NOTE).min(1) }),
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
  at: time,
  who: text(MOST_NAME),
  via: z.enum(['page', 'command', 'csv']),
  what: happening,
});

/**
 * What a store may hold: what earlier versions took is not asked again for its length and letters, only for what
 * everybody who reads it relies on.
 */
export const storedSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('step'), block: name, step: z.enum(STEPS), done: z.boolean() }),
  z.object({ kind: z.literal('note'), block: name, text: z.string() }),
  z.object({ kind: z.literal('photo'), block: name, photo: z.string() }),
  z.object({ kind: z.literal('trimmed'), block: name }),
  z.object({ kind: z.literal('timer'), batch: name, minutes: z.number() }),
]);

/**
 * A delivery: the client's clock and its events in order. The events are checked one by one, so that a bad one holds up
 * no others.
 */
export const deliverySchema = z.strictObject({
  sentAt: time,
  events: z.array(z.unknown()).max(MOST_EVENTS),
});

export const photoSchema = z.strictObject({ base64: z.base64() });
export const codeSchema = z.strictObject({ code: z.string().max(40) });
