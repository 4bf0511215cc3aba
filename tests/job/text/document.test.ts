import { expect, it } from 'vitest';
import { saidAbout } from '../readSample.js';

it.each([
  ['an empty file', '', 'job.yaml: the file is empty → begin with a starter job: chamberwright new FILE'],
  ['a file of blanks', ' \n\n', 'job.yaml: the file is empty → begin with a starter job: chamberwright new FILE'],
  [
    'a file of prose',
    'Dear shop,\nplease build a board.\n',
    'job.yaml:1: this is not a job: a block of keys is expected (job:, units:, board: …) → begin with a starter job: chamberwright new FILE',
  ],
  [
    'a list',
    '- a\n- b\n',
    'job.yaml:1: this is not a job: a block of keys is expected (job:, units:, board: …) → begin with a starter job: chamberwright new FILE',
  ],
  [
    'a tab',
    'job: a\nboard:\n\tlength: 1\n',
    'job.yaml:3:1: a tab stands where a line is moved in → spaces, never tabs',
  ],
  [
    'a key twice',
    'job: a\nboard:\n  length: 1\n  length: 2\n',
    'job.yaml:4:3: this key is there twice in the same block → keep one of them',
  ],
  ['two files in one', 'job: a\n---\njob: b\n', 'job.yaml:2:1: a line --- begins a second file → one job a file'],
  [
    'a name nothing has',
    'job: *a\n',
    'job.yaml: a * here fills in a name that nothing has → write the value out; a text that begins with * goes in quotes',
  ],
  [
    'a photo',
    'ÿØÿà\u0000\u0010JFIF',
    'job.yaml:1: the file holds characters that no text has; it is not a job file → a text file: save it as plain text, encoding UTF-8, line endings LF (Unix) or CRLF (Windows)',
  ],
])('%s is said to be no job', (_, text, expected) => {
  expect(saidAbout(text)).toEqual([expected]);
});

it('ten megabytes of noise are refused by their size, not read', () => {
  expect(saidAbout('x7 {:'.repeat(2_000_000))).toEqual([
    'job.yaml: the file is too large for a job file: 10000 kB → a job file, a few kB of text',
  ]);
});

it('names filled in without end are refused', () => {
  const levels = 'abcdefgh'.split('');
  const bomb = levels.map(
    (name, i) =>
      `${name}: &${name} [${Array.from({ length: 9 }, () => (i === 0 ? 'x' : `*${levels[i - 1]}`)).join(', ')}]`,
  );
  expect(saidAbout(bomb.join('\n'))).toEqual([
    'job.yaml: the file is too tangled to be a job: names filled in too often, or blocks too deep in each other → write the values out',
  ]);
});

it('brackets without end are refused', () => {
  expect(saidAbout(`job: ${'['.repeat(100_000)}`)).toEqual([expect.stringMatching(/too tangled/)]);
});

it('a block of thousands of keys is read in seconds, and each is said to be unknown', () => {
  const said = saidAbout(Array.from({ length: 20_000 }, (_, i) => `k${i}: 1`).join('\n'));
  expect(said).toHaveLength(201);
  expect(said.at(-1)).toBe('job.yaml: 19805 more mistakes like these → mend these first and read again');
});

it('keys that the language itself has are unknown like others', () => {
  const said = saidAbout('job: a\nunits: mm\n__proto__: {a: 1}\nconstructor: 2\n');
  expect(said.filter((line) => line.includes('is not known here'))).toHaveLength(2);
});

it('a broken JSON file is said to be broken where it is', () => {
  const said = saidAbout('{\n  "job": "x",\n  "units": "mm"\n  "board": 3\n}\n');
  expect(said).toEqual([
    'job.yaml:4:3: something that was opened here is not closed → a closing quote, ], } or a comma',
  ]);
});
