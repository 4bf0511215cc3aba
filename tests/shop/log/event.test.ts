import { describe, expect, it } from 'vitest';
import { happenedAt } from '../../../src/shop/log/event.js';

describe('when something happened', () => {
  it('is set right by how far the client’s clock is off as it delivers', () => {
    // A phone a day slow pressed ten minutes before it delivered at noon.
    const [day, minute, noon] = [86_400_000, 60_000, Date.UTC(2026, 2, 14, 12)];
    expect(happenedAt(noon - day - 10 * minute, noon - day, noon)).toBe(noon - 10 * minute);
    expect(happenedAt(noon + day - 10 * minute, noon + day, noon)).toBe(noon - 10 * minute);
  });

  it('is when it was received where the clock was set between the press and the delivery', () => {
    const noon = Date.UTC(2026, 2, 14, 12);
    expect(happenedAt(0, noon, noon)).toBe(noon); // pressed in 1970 by a phone whose clock had stopped
    expect(happenedAt(5, 253_402_300_799_999, noon)).toBe(noon);
  });

  it('is never after it was received', () => expect(happenedAt(5000, 1000, 2000)).toBe(2000));
});
