import { describe, expect, it } from 'vitest';
import { isSecondTouch } from '../../../../src/shop/page/link/taps.js';

const first = { block: 'R2-07', at: 10_000, x: 300, y: 400 };

describe('a double tap', () => {
  it('is one press: the same block within 0.7 s', () => {
    expect(isSecondTouch({ ...first, at: 10_699, x: 10, y: 10 }, first)).toBe(true);
    expect(isSecondTouch({ ...first, at: 10_700 }, first)).toBe(false);
    expect(isSecondTouch(first, undefined)).toBe(false);
  });

  it('is one press where the list has moved another block under the finger', () => {
    expect(isSecondTouch({ ...first, block: 'R2-08', at: 10_300, y: 420 }, first)).toBe(true);
  });

  it('is two where two blocks are ticked one after the other, down the list or by key', () => {
    expect(isSecondTouch({ ...first, block: 'R2-08', at: 10_300, y: 490 }, first)).toBe(false);
    const key = { block: 'R2-07', at: 10_000, x: 0, y: 0 };
    expect(isSecondTouch({ ...key, block: 'R2-08', at: 10_100 }, key)).toBe(false);
  });
});
