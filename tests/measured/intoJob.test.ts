import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { readJob } from '../../src/job/whole/read.js';
import { withMeasure, type Draft } from '../../src/measured/intoJob.js';
import type { Measure } from '../../src/measured/measure.js';

const BARE = `# a test board
job: bath
fill: {name: light, density: 12 kg/m3}
units: mm
board:
  length: 2000
  nose: round
  tail: round
  outline: [[500, 200], [1000, 250], [1500, 200]]
  stations:
    - {at: 0, bottom: 30, thick: 20}
    - {at: 1000, bottom: 0, thick: 90, section: {apex: 45 %, above: 80 %, below: 77 %, crown: 8}} # the middle
    - {at: 2000, bottom: 30, thick: 20}
glueUp:
  members:
    - {strip: eps-15, thickness: 60, joint: bonded}
    - {strip: eps-15, joint: dotted}
`;

const reread = (text: string) => readJob(text, 'bath.yaml', () => undefined);
const draftOf = (text: string): Draft => {
  const { job, findings } = reread(text);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return { text, job: job! };
};
const shaped = (...item: Measure['item']): Measure => ({ list: 'shaped', item });

test('a measure becomes a line of its list, and every other character stays', () => {
  const taken = withMeasure(draftOf(BARE), shaped(['at', '1000 mm'], ['thickness', '89']), reread);
  expect(taken).toMatchObject({ text: `${BARE}\nshaped:\n  - {at: 1000 mm, thickness: 89}\n` });
});

test('a measure of the same place takes the place of the one before, however the place is written', () => {
  const before = `${BARE}shaped: # by caliper\n  - fromTail: 100 cm # once\n    thickness: 9 cm\n    off: deck\n`;
  const taken = withMeasure(draftOf(before), shaped(['at', '1001 mm'], ['thickness', '89 mm']), reread);
  expect(taken).toMatchObject({ text: before.replace('9 cm', '89 mm'), before: '9 cm' });
  const left = withMeasure(draftOf(before), shaped(['at', '1 m'], ['side', '-10 cm'], ['thickness', '88']), reread);
  expect(left).toMatchObject({
    text: before.replace('off: deck\n', 'off: deck\n  - {at: 1 m, side: -10 cm, thickness: 88}\n'),
  });
  expect(left).not.toHaveProperty('before');
});

test('what cannot be is refused in the job’s own words, and nothing is written', () => {
  const why = (...item: Measure['item']) => withMeasure(draftOf(BARE), shaped(...item), reread);
  expect(why(['at', '1000'], ['thickness', '3.5'])).toMatchObject({
    what: '3.5 mm cannot be: 90 mm is drawn there',
    remedy: 'from 45 mm to 135 mm; measure it again, or draw the board as it is',
  });
  expect(why(['at', '1000'], ['thickness', '7 kg'])).toMatchObject({ what: '"kg" is not a unit of a length' });
  expect(why(['at', '2100'], ['width', '400'])).toMatchObject({
    what: 'it lies off the board, 100 mm behind the tail',
  });
  expect(why(['at', '1000'], ['side', '300'], ['thickness', '50'])).toMatchObject({
    what: 'it was measured 300 mm from the centreline, outside the rail',
  });
});

test('a weight takes the place of the one of its stage', () => {
  const weight = (written: string): Measure => ({
    list: 'weighings',
    item: [
      ['stage', 'shaped'],
      ['weight', written],
    ],
  });
  const once = withMeasure(draftOf(BARE), weight('4.2 kg'), reread) as Draft;
  expect(once.text).toBe(`${BARE}\nweighings:\n  - {stage: shaped, weight: 4.2 kg}\n`);
  expect(withMeasure(once, weight('4.3 kg'), reread)).toMatchObject({
    text: once.text.replace('4.2', '4.3'),
    before: '4.2 kg',
  });
});

test('a job in JSON, and one with the lines of Windows, stay what they are', () => {
  const windows = BARE.replaceAll('\n', '\r\n');
  expect(withMeasure(draftOf(windows), shaped(['at', '1 m'], ['width', '49 cm']), reread)).toMatchObject({
    text: `${windows}\r\nshaped:\r\n  - {at: 1 m, width: 49 cm}\r\n`,
  });
  const json = JSON.stringify(parse(BARE));
  const text = withMeasure(draftOf(json), shaped(['at', '1 m'], ['width', '49 cm']), reread) as Draft;
  expect((JSON.parse(text.text) as { shaped: unknown }).shaped).toEqual([{ at: '1 m', width: '49 cm' }]);
});
