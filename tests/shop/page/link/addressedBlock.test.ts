import { describe, expect, it } from 'vitest';
import { addressedBlock } from '../../../../src/shop/page/link/addressedBlock.js';

describe('the block an address asks for', () => {
  it.each([
    ['#block=R2-07', 'R2-07'],
    ['#block=R2%2D07', 'R2-07'],
    ['#block=100%', '100%'],
    ['#block=%E0%A4%A', '%E0%A4%A'],
    ['#BLOCK=r2-07&from=label', 'r2-07'],
    ['#block=', '(no number)'],
    [`#block=${'9'.repeat(500)}`, '9'.repeat(40)],
  ])('%s is answered', (hash, block) => expect(addressedBlock(hash)).toBe(block));

  it('is none where the address asks for none', () => {
    expect(addressedBlock('')).toBeUndefined();
    expect(addressedBlock('#code=ABCD')).toBeUndefined();
  });
});
