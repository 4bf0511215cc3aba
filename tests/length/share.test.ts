import { expect, it } from 'vitest';
import { parseShare } from '../../src/length/share.js';

it('a share is read from percent, decimals and fractions alike', () => {
  expect(['45 %', '45%', '0.45', 0.45, '9/20'].map(parseShare)).toEqual(
    Array.from({ length: 5 }, () => ({ ok: true, value: expect.closeTo(0.45, 12) })),
  );
});

it('a length is no share', () => {
  expect(parseShare('3 mm')).toEqual({
    ok: false,
    what: '"mm" is not a unit of a share',
    remedy: 'write 45 % or 0.45',
  });
});
