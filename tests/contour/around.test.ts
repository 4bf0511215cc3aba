import { expect, test } from 'vitest';
import { polygonAround } from '../../src/contour/around.js';
import { areaOf } from '../../src/contour/area.js';
import { perimeter } from '../../src/contour/perimeter.js';
import { straight } from '../../src/contour/straight.js';

// Circumscribed regular polygon of n sides about a circle of radius r: area n r² tan(π/n), perimeter 2 n r tan(π/n)
// (any handbook of mathematics).
test.each([3, 4, 16, 48, 96])(
  'a polygon of %i sides around a circle has the area and the perimeter of the book',
  (n) => {
    const around = straight(polygonAround([30, -12], 17, n));
    expect(areaOf(around)).toBeCloseTo(n * 17 ** 2 * Math.tan(Math.PI / n), 6);
    expect(perimeter(around)).toBeCloseTo(2 * n * 17 * Math.tan(Math.PI / n), 6);
  },
);

test('each of its sides touches the circle in its middle, and none enters it', () => {
  const corners = polygonAround([30, -12], 17, 16);
  corners.forEach(([x, y], i) => {
    const [x1, y1] = corners[(i + 1) % 16]!;
    expect(Math.hypot((x + x1) / 2 - 30, (y + y1) / 2 + 12)).toBeCloseTo(17, 9);
    expect(Math.hypot(x - 30, y + 12)).toBeCloseTo(17 / Math.cos(Math.PI / 16), 9);
  });
});
