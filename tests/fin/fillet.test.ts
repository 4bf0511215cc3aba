import { expect, test } from 'vitest';
import { filletArea, filletVolume } from '../../src/fin/fillet.js';
import { halfThickness } from '../../src/fin/foil.js';
import { kernel } from '../oracle/kernel.js';
import { builtFin } from './fins.js';

const k = await kernel();

test('a round between faces square to each other is a square less a quarter of a circle', () => {
  expect(filletArea(10, Math.PI / 2)).toBeCloseTo(100 * (1 - Math.PI / 4), 9);
});

test('a leaning fin takes more on the side it leans to, and as much as a polygon says', () => {
  const angle = (75 * Math.PI) / 180;
  // Corner, the points of touch, and the arc between them as a polygon in manifold-3d.
  const reach = 10 / Math.tan(angle / 2);
  const centre = [reach, 10] as const;
  const arc = Array.from({ length: 401 }, (_, i): [number, number] => {
    const at = -Math.PI / 2 - ((Math.PI - angle) * i) / 400;
    return [centre[0] + 10 * Math.cos(at), centre[1] + 10 * Math.sin(at)];
  });
  const area = new k.CrossSection([[[0, 0], ...arc]], 'EvenOdd').area();
  expect(filletArea(10, angle)).toBeCloseTo(area, 2);
  expect(filletArea(10, angle)).toBeGreaterThan(filletArea(10, Math.PI / 2));
});

test('the round about the base has the volume of offset slices in manifold-3d', () => {
  const fillet = { radius: 12, of: 'resin', cloth: [], reach: 0 } as const;
  const fin = builtFin({ base: 200, thickness: 18 }, { fillet });
  const upper = Array.from({ length: 201 }, (_, i): [number, number] => {
    const u = (i / 200) ** 2;
    return [200 * u, 18 * halfThickness(u)];
  });
  const section = new k.CrossSection(
    [[...upper].reverse().concat(upper.slice(1).map(([x, y]) => [x, -y]))],
    'Positive',
  );
  const slices = 200;
  let volume = 0;
  for (let i = 0; i < slices; i++) {
    // At a height the round reaches out to the circle whose middle lies a radius off both faces.
    const out = 12 - Math.sqrt(12 ** 2 - (12 - (12 * (i + 0.5)) / slices) ** 2);
    volume += (section.offset(out, 'Round', 2, 256).area() - section.area()) * (12 / slices);
  }
  expect(Math.abs(filletVolume(fin) / volume - 1)).toBeLessThan(0.01);
});
