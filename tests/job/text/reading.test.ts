import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { visit } from 'yaml';
import { readingOf, type Reading } from '../../../src/job/text/reading.js';

/**
 * Everything that is asked of a reading: its values, what is wrong with it, and where in the text each thing stands.
 */
function told({ text, document, lines, broken }: Reading) {
  const places: unknown[] = [document.range];
  visit(document, { Node: (key, { range }) => void places.push([key, range, range && lines.linePos(range[0])]) });
  return { text, value: broken.length > 0 ? undefined : valueOf(document), broken, places };
}

/** What a name stands for may be missing. */
function valueOf(document: Reading['document']): unknown {
  try {
    return document.toJS();
  } catch (error) {
    return String(error);
  }
}

const SHORT = `# a comment
job: "in quotes"
web: 1 in   # how thick
list: [1, 2.5, three words, {a: 1, b: }]
name: &own 7
again: *own
tagged: !!str 3
block: |
  line
empty:
last: x`;
const TEXTS = [
  SHORT,
  SHORT.replaceAll('\n', '\r\n'),
  `%YAML 1.1\n---\na: 012\n`,
  readFileSync('samples/tarn-rescue.yaml', 'utf8'),
];

/** What builders type, and what YAML reads as something else. */
const typed = fc.oneof(
  fc.double({ min: 0, max: 4000, noNaN: true }).map((mm) => `${Math.round(mm)} mm`),
  fc.constantFrom('1', '1 1/2 in', '0x1F', '1e3', '-5', '- 5', '---', '...', 'true', '~', 'null', 'follow', '"q"', "'"),
  fc.constantFrom('', ' ', 'a: b', 'a # b', '#', ',', ']', '}', '&x 1', '*own', '!!int 3', '|', '\n', '\r', '? x', '%'),
  fc.string({ unit: 'grapheme', maxLength: 6 }),
);

test('read over another text, a text reads as it does by itself, places and all', () => {
  let exchanges = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...TEXTS),
      fc.array(fc.tuple(fc.nat(), fc.nat(8), typed), { minLength: 1, maxLength: 6 }),
      (first, edits) => {
        let text = first;
        let reading = readingOf(text);
        for (const [at, taken, written] of edits) {
          const from = at % (text.length + 1);
          text = text.slice(0, from) + written + text.slice(from + taken);
          const before = reading;
          reading = readingOf(text, before);
          if (reading === before) exchanges++;
          expect(told(reading)).toEqual(told(readingOf(text)));
        }
      },
    ),
    { numRuns: 300, seed: 1126 },
  );
  expect(exchanges).toBeGreaterThan(30);
});

test('a bare value that becomes another is exchanged: the job is not read again', () => {
  let text = SHORT;
  let reading = readingOf(text);
  const { document } = reading;
  for (const web of ['1 1/16 in', '7/8 in', '1 in', '25', 'as drawn']) {
    text = text.replace(/web: [^#]*[^ #]/, `web: ${web}`);
    reading = readingOf(text, reading);
    expect(reading.document).toBe(document);
    expect(document.toJS()).toEqual(readingOf(text).document.toJS());
  }
});
