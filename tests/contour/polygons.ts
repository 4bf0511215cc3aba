import fc from 'fast-check';
import type { Point } from '../../src/contour/point.js';
import { evenly } from '../evenly.js';

/** Polygons whose edges do not cross, bent inward as often as outward: corners at rising angles around a middle, mm. */
export const stars = fc
  .array(fc.tuple(evenly(0.5, 1), evenly(8, 50)), {
    minLength: 5,
    maxLength: 12,
  })
  .map((steps): Point[] => {
    const around = steps.reduce((sum, [step]) => sum + step, 0);
    let angle = 0;
    return steps.map(([step, far]) => {
      angle += (2 * Math.PI * step) / around;
      return [far * Math.cos(angle), far * Math.sin(angle)];
    });
  });
