import { expect, test } from 'vitest';
import { blockMeant } from '../../../src/shop/page/findBlock.js';
import type { TrackedBlock } from '../../../src/shop/log/trackedBlock.js';

test('a block is found by what is typed and by what either kind of label says', () => {
  const blocks = ['R2-06', 'R2-07', 'R2-07a'].map((id) => ({ id }) as TrackedBlock);
  const label = 'Tarn rescue 11-4\nblock R2-07\nsawn 11 in x 2 in, thick 1 in';
  for (const text of ['R2-07', 'r2 7', 'R207', 'http://192.168.1.20:4718/shop/#block=R2-07', label]) {
    expect([text, blockMeant(text, blocks)?.id]).toEqual([text, 'R2-07']);
  }
  expect(blockMeant('R9-01', blocks)).toBeUndefined();
});
