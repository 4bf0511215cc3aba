import { createHash } from 'node:crypto';

/** A phone that has not been seen for this long must be let in again, ms. */
export const SESSION_LASTS = 7 * 24 * 3600_000;

/** What is kept of a phone's token. */
export function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
