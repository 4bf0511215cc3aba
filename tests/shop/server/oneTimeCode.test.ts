import { describe, expect, it } from 'vitest';
import { CODE_LASTS, OneTimeCode, TRIES_A_CODE, TRIES_A_MINUTE } from '../../../src/shop/server/oneTimeCode.js';

const MINUTE = 60_000;

describe('the code that lets a phone in', () => {
  it('is ten letters and digits that cannot be mistaken, in two halves', () => {
    const codes = Array.from({ length: 200 }, () => new OneTimeCode().shown);
    for (const code of codes) expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{5}-[0-9A-HJKMNP-TV-Z]{5}$/);
    expect(new Set(codes).size).toBe(200);
  });

  it('is taken as it is meant: small letters, spaces, O for 0, I and L for 1', () => {
    // Crockford's base 32: o reads as 0, i and l as 1.
    const code = new OneTimeCode();
    const typed = code.shown.toLowerCase().replace('-', ' ').replace(/0/g, 'o').replace(/1/g, 'l');
    expect(code.try(typed, 'a', 0)).toEqual({ kind: 'right' });
  });

  it('holds once', () => {
    let changed = 0;
    const code = new OneTimeCode(() => changed++);
    const first = code.shown;
    expect(code.try(first, 'a', 0).kind).toBe('right');
    expect(code.try(first, 'a', 0).kind).toBe('wrong');
    expect(changed).toBe(1);
  });

  it('after five wrong ones in a minute an address waits, the right code or not; others do not', () => {
    const code = new OneTimeCode();
    for (let i = 0; i < TRIES_A_MINUTE; i++) expect(code.try('wrong', 'a', i * 1000).kind).toBe('wrong');
    expect(code.try(code.shown, 'a', 10_000)).toEqual({ kind: 'wait', seconds: 50 });
    expect(code.try(code.shown, 'a', MINUTE + 1).kind).toBe('right');
    for (let i = 0; i < TRIES_A_MINUTE; i++) code.try('wrong', 'b', 0);
    expect(code.try(code.shown, 'c', 0).kind).toBe('right');
  });

  it('nobody used is exchanged for another after thirty minutes', () => {
    const code = new OneTimeCode(() => undefined, 0);
    const first = code.shown;
    code.renewIfOld(CODE_LASTS * MINUTE);
    expect(code.shown).toBe(first);
    expect(code.try(first, 'a', CODE_LASTS * MINUTE + 1).kind).toBe('wrong');
    expect(code.shown).not.toBe(first);
  });

  it('is changed after twenty wrong ones from anywhere', () => {
    const code = new OneTimeCode();
    const first = code.shown;
    for (let i = 0; i < TRIES_A_CODE; i++) code.try('wrong', `address ${i}`, 0);
    expect(code.shown).not.toBe(first);
    expect(code.try(first, 'a', 0).kind).toBe('wrong');
  });
});
