import { parse } from 'yaml';
import { expect, test } from 'vitest';
import { withItemAdded, withItemCopied, withoutItem } from '../../../src/job/edit/item.js';

const block = `# mine
keepOuts:
  - {name: plug, disc: 40}   # the leash
  - name: fin
    rectangle: {length: 200, width: 30}
  # the end
fill: eps
`;
const flow = 'a: {list: [[1, 2], [3, 4]], b: 5} # kept\n';

test('one more is written as the last one, and nothing else is touched', () => {
  const more = withItemCopied(block, ['keepOuts']);
  expect(parse(more)).toEqual({ keepOuts: [...parse(block).keepOuts, parse(block).keepOuts[1]], fill: 'eps' });
  for (const line of block.split('\n')) expect(more).toContain(line);
  expect(withItemCopied(flow, ['a', 'list'])).toBe('a: {list: [[1, 2], [3, 4], [3, 4]], b: 5} # kept\n');
});

test('one that is taken away goes with its lines or its comma', () => {
  expect(withoutItem(block, ['keepOuts', 0])).toBe(block.replace(/ {2}- \{.*\n/, ''));
  expect(parse(withoutItem(block, ['keepOuts', 1]))).toEqual({ keepOuts: [{ name: 'plug', disc: 40 }], fill: 'eps' });
  expect(withoutItem(flow, ['a', 'list', 0])).toBe('a: {list: [[3, 4]], b: 5} # kept\n');
  expect(withoutItem(flow, ['a', 'list', 1])).toBe('a: {list: [[1, 2]], b: 5} # kept\n');
});

test('the last of all leaves an empty list', () => {
  const one = withoutItem(block, ['keepOuts', 0]);
  expect(parse(withoutItem(one, ['keepOuts', 0]))).toEqual({ keepOuts: [], fill: 'eps' });
});

test('lines that end as on Windows stay so', () => {
  const windows = block.replaceAll('\n', '\r\n');
  expect(withItemCopied(windows, ['keepOuts'])).toBe(withItemCopied(block, ['keepOuts']).replaceAll('\n', '\r\n'));
});

test('a thing is added to a list however that was written, also where there is none yet', () => {
  const added = (text: string) =>
    withItemAdded(text, 'shaped', [
      ['at', '24 in'],
      ['width', '19'],
    ]);
  const item = '{at: 24 in, width: 19}';
  expect(added('job: a\n')).toBe(`job: a\n\nshaped:\n  - ${item}\n`);
  expect(added('shaped: [] # none\njob: a\n')).toBe(`shaped: [${item}] # none\njob: a\n`);
  expect(added('shaped:\njob: a\n')).toBe(`shaped: [${item}]\njob: a\n`);
  expect(added('shaped: [{at: 1, width: 2}]\njob: a\n')).toBe(`shaped: [{at: 1, width: 2}, ${item}]\njob: a\n`);
  expect(added('shaped:\n- at: 1\n  width: 2 # rail\n# end\n')).toBe(
    `shaped:\n- at: 1\n  width: 2 # rail\n- ${item}\n# end\n`,
  );
});
