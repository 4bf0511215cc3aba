/*
 * Papers carry a day, not a moment. It is held as midnight, UTC, of that day, and printed so: no clock's zone turns it
 * into the day before.
 */

/** Today, where the builder is. */
export function today(): Date {
  const now = new Date();
  return new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()));
}

/** A day as it is written (`2026-05-01`, ISO 8601); nothing where the calendar has none such. */
export function dayOf(text: string): Date | undefined {
  const date = new Date(/^\d{4}-\d\d-\d\d$/.test(text) ? `${text}T00:00:00Z` : NaN);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text) ? date : undefined;
}

/** A day as ISO 8601 writes it, in universal time: `2026-05-04`. */
export const isoDate = (date: Date): string => date.toISOString().slice(0, 10);
