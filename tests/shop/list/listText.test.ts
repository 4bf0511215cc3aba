import { describe, expect, it } from 'vitest';
import { listText } from '../../../src/shop/list/listText.js';

const WORDS = 'block;notes\r\nR2-07;Kiel schräg – “Bügel”\r\n';

describe('the bytes of a list', () => {
  it('are read as UTF-8 and UTF-16, with and without a byte order mark', () => {
    const utf16 = Buffer.from(WORDS, 'utf16le');
    const swapped = Buffer.from(utf16).swap16();
    for (const bytes of [
      Buffer.from(WORDS),
      Buffer.from(`\uFEFF${WORDS}`),
      utf16,
      Buffer.from(`\uFEFF${WORDS}`, 'utf16le'),
      swapped,
      Buffer.concat([Buffer.from([0xfe, 0xff]), swapped]),
    ])
      expect(listText(bytes)).toEqual({ text: WORDS, removed: 0 });
  });

  // ISO/IEC 8859-1: ä is E4, ü is FC.
  it('are read as Latin-1 where they are not UTF-8', () => {
    expect(listText(Buffer.from('schräg, Bügel', 'latin1')).text).toBe('schräg, Bügel');
  });

  it('lose their control characters, which are counted', () => {
    expect(listText(Buffer.from('a\u001b[2J\tb\u0000\r\n'))).toEqual({ text: 'a[2J\tb\r\n', removed: 2 });
  });
});
