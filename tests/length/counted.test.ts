import { expect, test } from 'vitest';
import { counted } from '../../src/length/counted.js';

test('one thing is not said as if it were several', () => {
  expect([0, 1, 2].map((count) => counted(count, 'row'))).toEqual(['0 rows', '1 row', '2 rows']);
  expect(counted(1, 'batch', 'batches')).toBe('1 batch');
  expect(counted(3, 'batch', 'batches')).toBe('3 batches');
});
