import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sayFinding } from '../../../src/finding/say.js';
import { readJob } from '../../../src/job/whole/read.js';
import { jobFiles } from '../../random/jobFile.js';
import { besideSamples, readText, saidAbout, textOf } from '../readSample.js';

const tarn = textOf('samples/tarn-rescue.yaml');
const fell = textOf('samples/fell-short.yaml');
const starter = textOf('templates/starter.yaml');
const table = besideSamples('fell-short.csv')!;

const with_ = (text: string, from: string, to: string): string => {
  expect(text).toContain(from);
  return text.replace(from, to);
};
const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;
const told = (text: string): string[] => (readText(text).job?.doubts ?? []).map(sayFinding);

describe('a slip in a table is told with its line and what its neighbours would have, and the job still plans', () => {
  it.each([
    [
      'a digit lost',
      '[66 in, 11 1/4 in]',
      '[66 in, 1 1/4 in]',
      'board.outline[8][1]: half of the width at 66 in from the nose is 1 1/4 in; by its neighbours it would be about 11 5/16 in',
    ],
    [
      'a digit too many',
      'thick: 3 15/16 in',
      'thick: 13 15/16 in',
      'board.stations[6].thick: the thickness at 64 in from the nose is 13 15/16 in; by its neighbours it would be about 4 in',
    ],
    [
      'the whole part lost',
      'bottom: 4 11/16 in',
      'bottom: 11/16 in',
      'board.stations[1].bottom: the bottom at 6 in from the nose is 11/16 in; by its neighbours it would be about 4 11/16 in',
    ],
  ])('%s', (_, from, to, expected) => {
    const text = with_(tarn, from, to);
    const remedy = 'measure and read it again; until then it is planned as written';
    expect(told(text)).toEqual([`line ${lineOf(text, to)}, ${expected} → ${remedy}`]);
  });

  it('a tail wider than the board', () => {
    expect(told(with_(tarn, 'tail: round', 'tail: {square: 30 in}'))).toContainEqual(
      expect.stringMatching(/board\.tail: half of the width at 136 in from the nose is 30 in; by its neighbours/),
    );
  });

  it('a point of a table of offsets ten times off', () => {
    const point = '450,188.1,55,';
    const off = with_(table, point, '450,188.1,5.5,');
    const line = lineOf(table, point);
    const { job } = readJob(fell, 'job.yaml', () => off);
    expect(job!.doubts!.map(({ what }) => what)).toEqual([
      `the point at 450 mm from the nose, y 188.1 mm, z 5.5 mm (line ${line} of the table) is far from the sections before and behind`,
    ]);
  });
});

describe('a single value that hardly any board has is told', () => {
  it.each([
    [
      tarn,
      'deck: [8 oz]',
      `deck: [${Array.from({ length: 200 }, () => '8 oz').join(', ')}]`,
      'glass.deck: 200 layers is far from what boards have, 0 layers to 8 layers',
    ],
    [tarn, 'rider: 185 lb', 'rider: 605 lb', 'rider: 605.0 lb is far from what boards have'],
    [
      starter,
      '# weighings:\n#   - {stage: shaped, weight: 31 lb 4 oz, scale: 4 oz}',
      'weighings:\n  - {stage: shaped, weight: 400 lb}',
      'weighings[0].weight: 400.0 lb is far from what boards have',
    ],
    [
      tarn,
      'cutter: 1/2 in\n  smallest: {length: 3 in, height: 1 in',
      'cutter: 2 in\n  smallest: {length: 3 in, height: 2 in',
      'chambers.cutter: 2 in is far from what boards have',
    ],
    [
      starter,
      'western-red-cedar, thickness: 1/4 in',
      'western-red-cedar, thickness: 3 1/4 in',
      'glueUp.members[2].thickness: 3 1/4 in is far from what boards have',
    ],
    [
      tarn,
      'name: leash plug, fromTail: 10 in, disc: 2 in',
      'name: leash plug, fromTail: 10 in, disc: 20 in',
      'keepOuts: a size of 20 in (leash plug) is far from what boards have',
    ],
  ])('%#', (text, from, to, expected) => {
    expect(told(with_(text, from, to))).toContainEqual(expect.stringContaining(expected));
  });
});

describe('nothing is told', () => {
  it.each(['samples/tarn-rescue.yaml', 'samples/mere-prone.yaml', 'samples/fell-short.yaml', 'templates/starter.yaml'])(
    'of %s',
    (path) => {
      expect(readText(textOf(path)).findings).toEqual([]);
    },
  );

  it('of 300 boards drawn at random', () => {
    fc.assert(
      fc.property(jobFiles, (file) => {
        const { findings } = readText(JSON.stringify(file));
        const slips = findings.filter(
          ({ severity, where }) => severity === 'warning' && where.path !== 'glueUp.members',
        );
        expect(slips.filter(({ what }) => !what.startsWith('the lowest bottom height'))).toEqual([]);
      }),
      { numRuns: 300, seed: 20_16 },
    );
  });

  it('of features that boards have: a square nose, a swallow tail, sharply kicked ends, wings in the outline', () => {
    const kicked = with_(
      with_(starter, '{at: 0, bottom: 5 in', '{at: 0, bottom: 6 1/4 in'),
      'bottom: 2 5/8 in, thick: 1/2 in',
      'bottom: 3 5/8 in, thick: 1/2 in',
    );
    const square = with_(kicked, 'nose: round', 'nose: {square: 2 1/2 in}');
    const swallow = with_(
      square,
      'tail: {squash: 3 1/4 in, corner: 1 1/2 in}',
      'tail: {swallow: 3 3/4 in, depth: 4 in}',
    );
    const winged = with_(
      swallow,
      '    - [108 in, 6 7/8 in]\n',
      '    - [104 in, 7 3/4 in]\n    - [104 1/2 in, 7 3/8 in]\n    - [108 in, 6 7/8 in]\n',
    );
    expect(saidAbout(winged)).toEqual([]);
  });
});
