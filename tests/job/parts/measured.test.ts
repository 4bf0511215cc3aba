import { describe, expect, it } from 'vitest';
import { planOf } from '../../../src/plan.js';
import { resultOf } from '../../../src/view/result.js';
import { readText, saidAbout, textOf } from '../readSample.js';

const tarn = textOf('samples/tarn-rescue.yaml');
const shaped = (...lines: string[]): string => `${tarn}\nshaped:\n${lines.map((line) => `  - {${line}}\n`).join('')}`;

describe('measures after shaping that cannot be are refused', () => {
  it.each([
    [
      'ten times too thick',
      ['at: 48 in, thickness: 38 in'],
      'shaped[0].thickness: 38 in cannot be: 3 7/8 in is drawn there → from 1 15/16 in to 5 13/16 in',
    ],
    [
      'the whole part lost',
      ['at: 48 in, thickness: 7/8 in'],
      'shaped[0].thickness: 7/8 in cannot be: 3 7/8 in is drawn there',
    ],
    ['half a width', ['at: 48 in, width: 11 in'], 'shaped[0].width: 11 in cannot be: 22 1/4 in is drawn there'],
    [
      'a wall thicker than the board',
      ['chamber: R2-05, deck: 7 in'],
      'shaped[0].deck: a wall of 7 in is more than the board has, 3 15/16 in',
    ],
    [
      'beside the board',
      ['at: 48 in, side: 12 in, thickness: 3 in'],
      'shaped[0].thickness: it was measured 12 in from the centreline, outside the rail',
    ],
    [
      'two of one place',
      ['at: 48 in, thickness: 3 7/8 in', 'at: 48 in, thickness: 3 11/16 in'],
      'shaped[1].thickness: two measures of one place contradict: 3 7/8 in (number 1 of the list) and 3 11/16 in → measure again and keep one of them',
    ],
  ])('%s', (_, lines, expected) => {
    expect(saidAbout(shaped(...lines))).toEqual([expect.stringContaining(expected)]);
  });

  it('two of one place that agree are taken', () => {
    expect(saidAbout(shaped('at: 48 in, thickness: 3 7/8 in', 'at: 48 in, thickness: 3 29/32 in'))).toEqual([]);
  });
});

describe('measures after shaping that hardly can be are told with the plan', () => {
  const doubts = (...lines: string[]) =>
    planOf(readText(shaped(...lines)).job!).doubts.map(({ where: { path }, what }) => `${path}: ${what}`);

  it('an inch too much is told; what shaping by hand leaves is not', () => {
    expect(
      doubts('at: 48 in, thickness: 4 7/8 in', 'at: 80 in, thickness: 3 13/16 in', 'at: 64 in, width: 22 3/8 in'),
    ).toEqual(['shaped[0].thickness: 4 7/8 in is 1 in more than is drawn there']);
  });

  it('is published with its key, what and what to do, by the names that other programs know', () => {
    const plan = planOf(readText(shaped('at: 48 in, thickness: 4 7/8 in')).job!);
    expect(resultOf(plan).doubts).toEqual([
      {
        path: 'shaped[0].thickness',
        what: '4 7/8 in is 1 in more than is drawn there',
        instead: 'measure it again; until then the board is planned through it as written',
      },
    ]);
  });

  it('one that differs from the drawing as none of the others does is told', () => {
    const alike = [24, 36, 64, 80, 96].map(
      (at, i) => `at: ${at} in, thickness: ${['3', '3 1/2', '3 7/8', '3 13/16', '3 1/2'][i]} in`,
    );
    expect(doubts(...alike, 'at: 48 in, thickness: 4 1/8 in')).toEqual([
      expect.stringMatching(
        /^shaped\[5\]\.thickness: 4 1\/8 in is 1\/4 in more than is drawn there; the others differ by about 1\/16 in$/,
      ),
    ]);
  });
});
