import { readdirSync, readFileSync, statSync } from 'node:fs';
import { extname, join } from 'node:path';
import { expect, test } from 'vitest';

/** Everything that a builder reads, and the code it is written in. */
const READ = ['templates', 'src', 'samples', 'README.md', 'CHANGELOG.md'];
const TEXTS = ['.json', '.yaml', '.ts', '.tsx', '.md', '.html'];

function filesIn(path: string): string[] {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path).flatMap((name) => filesIn(join(path, name)));
}

/** Words that were there and were not understood at the bench; what is said instead stands behind them. */
const GONE: readonly (readonly [RegExp, string])[] = [
  [/\bproven\b/i, 'proved'],
  [/\b(take|taken) (it |this )?away [`'"<]|>\s*take away|"take away/i, 'Remove'],
  [/take it away/i, 'Close'],
  [/one more like it/i, 'Add another'],
  [/aria-label="(nearer|further)"/i, 'Zoom in, Zoom out'],
  [/>in space<|view in space|draw in space/i, '3D view'],
  [/>beside it:/i, 'Compared with'],
  [/nine times of ten|two times in three/i, 'nine times out of ten, two times out of three'],
  [/place on the water/i, 'longer than 8 m is not supported'],
  [/puddle/i, 'too much resin'],
  [/take back[`'":<]|>\s*take back|, taken back/i, 'Undo'],
  [/keep note/i, 'Save note'],
  [/mistake of ours/i, 'a fault in the program'],
  [/what shall\s+count/i, 'which version do you want to keep'],
  [/slip of the pen/i, 'a wrong digit'],
  [/\b1 (points|chambers|blocks|rows|pieces|places|pages|notes)\b/, 'the singular'],
];

test('words that were not understood at the bench have not come back', () => {
  const found = READ.flatMap(filesIn)
    .filter((file) => TEXTS.includes(extname(file)))
    .flatMap((file) => {
      const text = readFileSync(file, 'utf8');
      return GONE.flatMap(([word, instead]) =>
        word.test(text) ? [`${file}: ${word.exec(text)![0]} → ${instead}`] : [],
      );
    });
  expect(found).toEqual([]);
});

test.each([
  ['on paper', readFileSync('templates/cautions.json', 'utf8')],
  ['on the cover', readFileSync('templates/sheets.json', 'utf8')],
  ['beside the cuts', readFileSync('templates/cutting.json', 'utf8')],
  ['on the page with the plan', readFileSync('templates/bench.json', 'utf8')],
  ['on the page in the shop', readFileSync('src/shop/page/words.ts', 'utf8')],
  ['in the README', readFileSync('README.md', 'utf8')],
])('the cautions %s defer to licensed practice', (_, text) => {
  expect(text).toMatch(/licen[sc]e/i);
});
