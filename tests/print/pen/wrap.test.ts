import fc from 'fast-check';
import { expect, it } from 'vitest';
import { wrap } from '../../../src/print/pen/wrap.js';

/** Every letter a millimetre wide. */
const measure = (text: string): number => Array.from(text).length;

it('breaks at spaces, and inside a word only when it is wider than a line', () => {
  expect(wrap('cut the red one first', 8, 1, false, measure)).toEqual(['cut the', 'red one', 'first']);
  expect(wrap('a overlongword b', 6, 1, false, measure)).toEqual(['a', 'overlo', 'ngword', 'b']);
  expect(wrap('two\nlines', 20, 1, false, measure)).toEqual(['two', 'lines']);
});

it('loses no letter and makes no line too wide', () => {
  fc.assert(
    fc.property(fc.string(), fc.integer({ min: 1, max: 12 }), (text, width) => {
      const lines = wrap(text, width, 1, false, measure);
      for (const line of lines) expect(measure(line)).toBeLessThanOrEqual(Math.max(1, width));
      const bare = (s: string): string => s.replace(/[ \r\n]/g, '');
      expect(bare(lines.join(''))).toBe(bare(text));
    }),
    { seed: 20260504 },
  );
});
