import { parse } from 'yaml';
import { expect, test } from 'vitest';
import { withItemCopied, withoutItem } from '../../../src/bench/edit/item.js';

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
