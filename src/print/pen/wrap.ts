import { wordsOf } from '../../length/wordsOf.js';
import type { Measure } from './pen.js';

/**
 * Breaks a text into lines no wider than `width` mm, at spaces, and within a word only when it is wider than a line by
 * itself. Line breaks in the text are kept. Nothing is left out.
 */
export function wrap(text: string, width: number, height: number, bold: boolean, measure: Measure): readonly string[] {
  const fits = (line: string): boolean => measure(line, bold) * height <= width;
  return text.split(/\r?\n/).flatMap((paragraph) => {
    if (fits(paragraph)) return [paragraph];
    const lines: string[] = [];
    let line = '';
    for (const word of wordsOf(paragraph)) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (fits(longer)) {
        line = longer;
        continue;
      }
      if (line !== '') lines.push(line);
      line = word;
      while (!fits(line)) {
        const letters = Array.from(line);
        let count = letters.length - 1;
        while (count > 1 && !fits(letters.slice(0, count).join(''))) count--;
        if (count < 1) break;
        lines.push(letters.slice(0, count).join(''));
        line = letters.slice(count).join('');
      }
    }
    lines.push(line);
    return lines;
  });
}
