import type { Drawing } from './drawing.js';

/** Letters and digits that are not taken for one another: those of Crockford's base 32. */
const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const LETTERS = 5;
/** Coordinates count to a thousandth of a millimetre: less makes no other sheet. */
const STEP = 1000;

/**
 * A short stamp of what drawings show: five letters or digits, the same for the same drawings, another (but for one
 * chance in 33 million) for others.
 */
export function stampOf(drawings: readonly Drawing[]): string {
  const rounded = (key: string, value: unknown) => {
    // Where words stand on the paper at hand makes no other sheet.
    if (key === 'places') return [...(value as Iterable<unknown>)].slice(0, 1);
    return typeof value === 'number' ? Math.round(value * STEP) / STEP : value;
  };
  const [high, low] = fnv1a(new TextEncoder().encode(JSON.stringify(drawings, rounded)));
  const left = (high ^ low) >>> 0;
  return Array.from({ length: LETTERS }, (_, i) => SIGNS[(left >>> (5 * i)) & 31]!).join('');
}

/**
 * The hash FNV-1a of 64 bits, as two halves of 32.
 *
 * Source: Fowler, Noll, Vo, Eastlake, The FNV Non-Cryptographic Hash Algorithm, IETF draft-eastlake-fnv, sections 2 and
 * 5.
 */
export function fnv1a(bytes: Uint8Array): readonly [high: number, low: number] {
  let low = 0x84222325;
  let high = 0xcbf29ce4;
  for (const byte of bytes) {
    low = (low ^ byte) >>> 0;
    // Times the prime 2^40 + 0x1b3, modulo 2^64, in halves.
    const product = low * 0x1b3;
    high = (Math.imul(high, 0x1b3) + Math.floor(product / 2 ** 32) + (low << 8)) >>> 0;
    low = product >>> 0;
  }
  return [high, low];
}
