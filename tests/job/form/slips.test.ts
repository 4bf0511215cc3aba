import { expect, it } from 'vitest';
import { saidAbout, textOf } from '../readSample.js';

const tarn = textOf('samples/tarn-rescue.yaml');

/** Slips of the hand in the rescue board's job, and all that is said about each, line and remedy included. */
const SLIPS: readonly (readonly [slip: string, right: string, wrong: string, said: string])[] = [
  [
    'the colon lost',
    'length: 11 ft 4 in',
    'length 11 ft 4 in',
    `job.yaml:6:3: the colon behind "length" is missing → length: 11 ft 4 in`,
  ],
  [
    'the space behind the colon lost',
    'length: 11 ft 4 in',
    'length:11 ft 4 in',
    `job.yaml:6:3: a space is missing behind the colon of "length" → length: 11 ft 4 in`,
  ],
  [
    'an equals sign',
    'length: 11 ft 4 in',
    'length = 11 ft 4 in',
    `job.yaml:6:3: "=" stands behind "length" where a colon belongs → length: 11 ft 4 in`,
  ],
  [
    'a semicolon for the colon',
    'pitch: 12 in',
    'pitch; 12 in',
    `job.yaml:57:3: ";" stands behind "pitch" where a colon belongs → pitch: 12 in`,
  ],
  [
    'two colons',
    'pitch: 12 in',
    'pitch:: 12 in',
    `job.yaml:57:3: chambers.pitch:: ":" is written once too often behind "pitch" → pitch:`,
  ],
  [
    'a semicolon at the end',
    'length: 11 ft 4 in',
    'length: 11 ft 4 in;',
    `job.yaml:6:11: board.length: "11 ft 4 in" is written with a ";" behind it → without it: 11 ft 4 in`,
  ],
  [
    'a comma at the end',
    'pitch: 12 in',
    'pitch: 12 in,',
    `job.yaml:57:10: chambers.pitch: "12 in" is written with a "," behind it → without it: 12 in`,
  ],
  [
    'a square bracket not closed',
    '[66 in, 11 1/4 in]',
    '[66 in, 11 1/4 in',
    `job.yaml:18:5: what is opened in this line is not closed: "]" is missing → - [66 in, 11 1/4 in]`,
  ],
  [
    'a square bracket not opened',
    '[66 in, 11 1/4 in]',
    '66 in, 11 1/4 in]',
    `job.yaml:18:7: board.outline[8]: the brackets around a pair are missing → [66 in, 11 1/4 in]`,
  ],
  [
    'no brackets',
    '[66 in, 11 1/4 in]',
    '66 in, 11 1/4 in',
    `job.yaml:18:7: board.outline[8]: the brackets around a pair are missing → [66 in, 11 1/4 in]`,
  ],
  [
    'round brackets',
    '[66 in, 11 1/4 in]',
    '(66 in, 11 1/4 in)',
    `job.yaml:18:7: board.outline[8]: round brackets stand around a pair → [66 in, 11 1/4 in]`,
  ],
  [
    'a brace not closed',
    'thick: 3 7/8 in}\n    - {at: 64',
    'thick: 3 7/8 in\n    - {at: 64',
    `job.yaml:33:5: what is opened in this line is not closed: "}" is missing → - {at: 48 in, bottom: 5/16 in, thick: 3 7/8 in}`,
  ],
  [
    'a brace not opened',
    '- {at: 48 in',
    '- at: 48 in',
    `job.yaml:33:5: "}" closes what nothing opened → - {at: 48 in, bottom: 5/16 in, thick: 3 7/8 in}`,
  ],
  [
    'a brace too many',
    'fill: {foam: eps-12}',
    'fill: {foam: eps-12}}',
    `job.yaml:77:1: "}" closes what nothing opened → no "}" there`,
  ],
  [
    'the comma of a pair lost',
    '[66 in, 11 1/4 in]',
    '[66 in 11 1/4 in]',
    `job.yaml:18:7: board.outline[8]: 1 value stands in brackets where two belong → two with a comma between them: [12 in, 6 in]`,
  ],
  [
    'a decimal comma in a pair',
    '[66 in, 11 1/4 in]',
    '[66 in, 11,25 in]',
    `job.yaml:18:7: board.outline[8]: 3 values stand in brackets where two belong → two with one comma between them; a decimal point, not a comma, goes in a number: [12.5 in, 6 in]`,
  ],
  [
    'a decimal comma',
    'pitch: 12 in',
    'pitch: 12,5 in',
    `job.yaml:57:10: chambers.pitch: "12,5 in" has a comma in the number → write a decimal point: 1.5, not 1,5`,
  ],
  [
    'a tab',
    '  pitch: 12 in',
    '\tpitch: 12 in',
    `job.yaml:57:1: a tab stands where a line is moved in → spaces, never tabs`,
  ],
  [
    'a special blank',
    '  pitch: 12 in',
    '\u00a0 pitch: 12 in',
    `job.yaml:57:1: a special blank, as web pages and word processors have them, stands where a line is moved in → spaces; retype the beginning of the line`,
  ],
  [
    'moved in less',
    '  datum: 12 in',
    ' datum: 12 in',
    `job.yaml:58:1: this line is not moved in as its neighbours are → 2 spaces before it, as for all keys of a block`,
  ],
  [
    'moved in more',
    '  datum: 12 in',
    '   datum: 12 in',
    `job.yaml:58:1: this line is not moved in as its neighbours are → 2 spaces before it, as for all keys of a block`,
  ],
  [
    'moved to the left edge',
    '  datum: 12 in',
    'datum: 12 in',
    `job.yaml:58:1: "datum" belongs to a block and is not moved in → as many spaces before it as its neighbours have`,
  ],
  [
    'the last of a block moved to the left edge',
    '  solidTail: 8 in',
    'solidTail: 8 in',
    `job.yaml:70:1: solidTail: "solidTail" stands at the left edge, and belongs to a block → move it in as far as the other keys of its block`,
  ],
  [
    'a key twice',
    '  web: 1 in',
    '  web: 1 in\n  web: 2 in',
    `job.yaml:61:3: this key is there twice in the same block → keep one of them`,
  ],
  [
    'two keys in a line',
    'pitch: 12 in\n',
    'pitch: 12 in datum: 3 in\n',
    `job.yaml:57:3: two keys stand in one line, "pitch" and "datum" → one key a line, or in brackets: {key: value, key: value}`,
  ],
  [
    'the dash lost',
    '    - {at: 48 in,',
    '    {at: 48 in,',
    `job.yaml:33:5: an entry is written without its dash → - {at: 48 in, bottom: 5/16 in, thick: 3 7/…`,
  ],
  [
    'the space behind the dash lost',
    '    - {at: 48 in,',
    '    -{at: 48 in,',
    `job.yaml:33:5: a space is missing behind the dash → - {at: 48 in, bottom: 5/16 in, thick: 3 7/…`,
  ],
  [
    'a quote not closed',
    'job: Tarn rescue 11-4',
    'job: "Tarn rescue 11-4',
    `job.yaml:2:1: a quote is opened in this line and not closed → the same quote at the end of the text, or none at all`,
  ],
  [
    'feet and inches in quotes',
    'length: 11 ft 4 in',
    "length: '11' 4\"",
    `job.yaml:6:3: "4"" stands behind the end of a text in quotes → lengths need no quotes: 11' 4 1/2"; a text in quotes ends where its quote does`,
  ],
  [
    'a colon in a text',
    'job: Tarn rescue 11-4',
    'job: Tarn: rescue',
    `job.yaml:2:1: a second colon stands in the value of "job" → the text in quotes: job: "Tarn: rescue"`,
  ],
  [
    'the percent sign first',
    'stagger: 50 %',
    'stagger: %50',
    `job.yaml:59:3: a value cannot begin with "%" → the number first: 50 %`,
  ],
  [
    'the percent sign lost',
    'stagger: 50 %',
    'stagger: 50',
    `job.yaml:59:12: chambers.stagger: 5000 % cannot be right here → 50 %, if that is meant; between 0 % and 100 %: a whole pitch is no shift`,
  ],
  [
    'a note without its blank',
    'pitch: 12 in',
    'pitch: 12 in# hi',
    `job.yaml:57:10: chambers.pitch: "12 in" is written with a # right behind it → a space before the #: 12 in #`,
  ],
  [
    'a note as in a program',
    'glueUp:',
    '// glue\nglueUp:',
    `job.yaml:43:1: this is no key; perhaps it is meant for people only → a # before what is not to be read`,
  ],
  [
    'a block without its colon',
    'chambers:',
    'chambers',
    `job.yaml:56:1: the colon behind "chambers" is missing → chambers:`,
  ],
  [
    'a capital',
    '  pitch: 12 in',
    '  Pitch: 12 in',
    `job.yaml:57:3: chambers.Pitch: "Pitch" is not known here → did you mean "pitch"? Known here: pitch, datum, stagger, web, deckSkin, bottomSkin, railWall, floor, tolerance, shape, cutter, smallest, solidNose, solidTail`,
  ],
  [
    'a colon in braces without its space',
    '{at: 48 in, bottom: 5/16 in',
    '{at:48 in, bottom: 5/16 in',
    `job.yaml:33:8: board.stations[5].at:48 in: a space is missing behind the colon of "at" → at: 48 in`,
  ],
  [
    'the colon in braces lost',
    'thick: 3 7/8 in}\n    - {at: 64',
    'thick 3 7/8 in}\n    - {at: 64',
    `job.yaml:33:36: board.stations[5].thick 3 7/8 in: the colon behind "thick" is missing → thick: 3 7/8 in`,
  ],
  [
    'nothing behind a key',
    '  pitch: 12 in',
    '  pitch:',
    `job.yaml:57:9: chambers.pitch: nothing is written where a single value should be → write it like 3/4 in or 11 ft 4 in or 19 mm`,
  ],
  [
    'a count in words',
    'thickness: 2 in, count: 2',
    'thickness: 2 in, count: two',
    `job.yaml:83:61: blocks.stock[0].count: "two" is written → a number alone, like 4 or 2.5`,
  ],
  [
    'out of bounds',
    'railWall: 3/4 in',
    'railWall: 0',
    `job.yaml:63:13: chambers.railWall: 0 in cannot be right here → between 0.04 in and 11 3/4 in: a thinner wall does not survive the router, a thicker one leaves no chamber`,
  ],
];

it.each(SLIPS)('%s is told where it is, with what would be right', (_, right, wrong, said) => {
  expect(tarn.split(right)[1]).toBeDefined();
  expect(saidAbout(tarn.replace(right, wrong)).join('\n')).toBe(said);
});

it('a file in UTF-16 or with old line endings is told how to save it', () => {
  const how = 'save it anew as plain text, encoding UTF-8, line endings LF (Unix) or CRLF (Windows)';
  expect(saidAbout('\ufffd\ufffd' + [...tarn].join('\u0000'))).toEqual([
    `job.yaml: the file is saved as UTF-16, which some editors call "Unicode" → ${how}`,
  ]);
  expect(saidAbout(tarn.replaceAll('\n', '\r'))).toEqual([
    `job.yaml: its lines end as on computers of long ago (CR alone), so that it is one long line → ${how}`,
  ]);
  expect(saidAbout(`\ufeff${tarn.replaceAll('\n', '\r\n')}`)).toEqual([]);
});
