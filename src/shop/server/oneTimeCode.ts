import { createHash, randomInt, timingSafeEqual } from 'node:crypto';

/** Letters and digits that nobody mistakes for one another (Crockford's base 32). */
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** 50 bits: at the tries allowed below, guessing would take longer than the board lasts. */
const LENGTH = 10;
/** Wrong codes a single address may send in a minute, and all together before the code is changed. */
export const TRIES_A_MINUTE = 5;
export const TRIES_A_CODE = 20;
const MINUTE = 60_000;
/** A code that nobody used is exchanged for another after so many minutes. */
export const CODE_LASTS = 30;

export type Tried =
  { readonly kind: 'right' } | { readonly kind: 'wrong' } | { readonly kind: 'wait'; readonly seconds: number };

/** The code that lets one phone in. Used once, or guessed at too often, it is gone and there is another. */
export class OneTimeCode {
  private code = newCode();
  private made: number;
  private wrong = 0;
  private readonly triesFrom = new Map<string, number[]>();

  /** @param changed told each time there is another code to show */
  constructor(
    private readonly changed: () => void = () => undefined,
    now = Date.now(),
  ) {
    this.made = now;
  }

  /** The code as it is shown: `7K3QD-9XW2M`. */
  get shown(): string {
    return `${this.code.slice(0, LENGTH / 2)}-${this.code.slice(LENGTH / 2)}`;
  }

  /**
   * Tries a code. Lower case, spaces, and the letters O, I and L for 0 and 1 are taken as meant.
   *
   * @param address where the try came from
   * @param now ms
   */
  try(typed: string, address: string, now: number): Tried {
    for (const [from, times] of this.triesFrom) if (times.at(-1)! <= now - MINUTE) this.triesFrom.delete(from);
    const recent = (this.triesFrom.get(address) ?? []).filter((time) => time > now - MINUTE);
    if (recent.length >= TRIES_A_MINUTE) {
      return { kind: 'wait', seconds: Math.ceil((recent[0]! + MINUTE - now) / 1000) };
    }
    this.renewIfOld(now);
    if (isEqual(asMeant(typed), this.code)) {
      this.triesFrom.delete(address);
      this.renew(now);
      return { kind: 'right' };
    }
    this.triesFrom.set(address, [...recent, now]);
    if (++this.wrong >= TRIES_A_CODE) this.renew(now);
    return { kind: 'wrong' };
  }

  /** Exchanges a code that was shown for too long. */
  renewIfOld(now: number): void {
    if (now - this.made > CODE_LASTS * MINUTE) this.renew(now);
  }

  private renew(now: number): void {
    this.made = now;
    this.code = newCode();
    this.wrong = 0;
    this.changed();
  }
}

function newCode(): string {
  return Array.from({ length: LENGTH }, () => LETTERS[randomInt(LETTERS.length)]).join('');
}

function asMeant(typed: string): string {
  return typed.toUpperCase().replace(/[\s-]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1');
}

function isEqual(a: string, b: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(a), digest(b));
}
