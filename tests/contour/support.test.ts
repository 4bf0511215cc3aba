import { expect, test } from 'vitest';
import { support } from '../../src/contour/support.js';

/** A slot: two straights of 60 mm and two half circles of 10 mm. */
const slot = [
  { x: 0, y: 0 },
  { x: 60, y: 0, bulge: 1 },
  { x: 60, y: 20 },
  { x: 0, y: 20, bulge: 1 },
];

test('a slot reaches as far as its half circles do, in every direction', () => {
  // The support function of a segment with a disc: that of the segment and the radius.
  for (let angle = 0; angle < 2 * Math.PI; angle += 0.1) {
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
    expect(support(slot, angle)).toBeCloseTo(Math.max(0, 60 * ux) + 10 * uy + 10, 9);
  }
});
