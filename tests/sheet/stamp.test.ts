import { describe, expect, test } from 'vitest';
import { fnv1a, stampOf } from '../../src/sheet/stamp.js';
import { faceSheet } from '../../src/sheet/face/faceSheet.js';
import { sheetRows } from '../../src/sheet/mirror.js';
import { smallPlan } from './smallPlan.js';

const hex = (words: string) =>
  fnv1a(new TextEncoder().encode(words))
    .map((half) => half.toString(16).padStart(8, '0'))
    .join('');

describe('the stamp of a state of the job', () => {
  test('is a hash that its authors publish values of', () => {
    // IETF draft-eastlake-fnv, the test vectors of appendix C, 64 bits.
    expect(hex('')).toBe('cbf29ce484222325');
    expect(hex('a')).toBe('af63dc4c8601ec8c');
    expect(hex('foobar')).toBe('85944171f73967e8');
  });

  test('stays while the drawings do, and is another when a line moves by a tenth of a millimetre', () => {
    const drawings = sheetRows(smallPlan()).map((row) => faceSheet(smallPlan(), row));
    const moved = structuredClone(drawings) as unknown as { shapes: { kind: string; x: number }[] }[];
    const line = moved[0]!.shapes.find(({ kind }) => kind === 'circle')!;
    expect(stampOf(drawings)).toMatch(/^[0-9A-HJKMNP-TV-Z]{5}$/);
    expect(stampOf(structuredClone(drawings))).toBe(stampOf(drawings));
    line.x += 0.0001;
    expect(stampOf(moved as never)).toBe(stampOf(drawings));
    line.x += 0.1;
    expect(stampOf(moved as never)).not.toBe(stampOf(drawings));
  });
});
