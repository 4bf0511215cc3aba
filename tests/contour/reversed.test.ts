import { expect, test } from 'vitest';
import { areaOf } from '../../src/contour/area.js';
import { perimeter } from '../../src/contour/perimeter.js';
import { reversed } from '../../src/contour/reversed.js';

test('a mirrored contour, run backward, is the same figure: its area and length are the same, and it turns left', () => {
  const odd = [
    { x: 0, y: 0 },
    { x: 40, y: 5, bulge: 0.3 },
    { x: 30, y: 30 },
    { x: 4, y: 22, bulge: -0.2 },
  ];
  const mirrored = reversed(odd.map((v) => ({ ...v, x: -v.x })));
  expect(areaOf(mirrored)).toBeCloseTo(areaOf(odd), 9);
  expect(perimeter(mirrored)).toBeCloseTo(perimeter(odd), 9);
});
