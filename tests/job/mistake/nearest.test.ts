import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearest } from '../../../src/job/mistake/nearest.js';

describe('editDistance', () => {
  // kitten → sitting 3: the textbook example of Levenshtein's distance (Wagner & Fischer, J. ACM 21(1), 1974; from
  // memory).
  it.each([
    ['kitten', 'sitting', 3],
    ['ca', 'ac', 1],
    ['web', '', 3],
    ['web', 'web', 0],
  ])('from %s to %s is %d', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  it('is the same both ways and no more than the longer word', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 }), (a, b) => {
        const distance = editDistance(a, b);
        return (
          distance === editDistance(b, a) && distance <= Math.max(a.length, b.length) && (distance === 0) === (a === b)
        );
      }),
    );
  });
});

describe('nearest', () => {
  it('finds the key that was meant', () => {
    expect([
      nearest('deckskin', ['deckSkin', 'bottomSkin']),
      nearest('thik', ['thick', 'width']),
      nearest('wbe', ['web']),
    ]).toEqual(['deckSkin', 'thick', 'web']);
  });

  it('means nothing by a word unlike all', () => {
    expect([nearest('colour', ['web', 'pitch']), nearest('cm', ['mm', 'in']), nearest('x', [])]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});
