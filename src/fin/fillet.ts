import type { FinSpec } from '../job/spec/finish.js';
import { halfThickness } from './foil.js';
import { sidesOf } from './layers.js';

/**
 * Area between two faces that meet at `angle` (radians) and the round of `radius` that touches both, mm². The two
 * tangents, less the sector of the circle.
 */
export function filletArea(radius: number, angle: number): number {
  return radius ** 2 * (1 / Math.tan(angle / 2) - (Math.PI - angle) / 2);
}

/**
 * How far the centre of that area lies from the first face, mm, where the faces are square to each other: a square less
 * a quarter of a circle.
 */
export function filletCentre(radius: number): number {
  return (radius * (5 / 6 - Math.PI / 4)) / (1 - Math.PI / 4);
}

/** The round all about the base of one fin, mm³: along both sides at their own angles, and around its two ends. */
export function filletVolume(fin: FinSpec): number {
  const { fillet, stands } = fin.build!;
  const { radius } = fillet!;
  const half = sideLengths(fin);
  return [1, -1].reduce((sum, side, i) => {
    const area = filletArea(radius, Math.PI / 2 + side * stands.cant);
    // A round about a convex outline is as much longer as the circle its centre runs on (Pappus).
    return sum + area * (half[i]! + Math.PI * filletCentre(radius));
  }, 0);
}

/** Width of a strip of cloth from the fin over the round onto the board, `reach` beyond it on both, mm. */
export function filletCloth(radius: number, reach: number): number {
  return (radius * Math.PI) / 2 + 2 * reach;
}

/** Along the base on the foiled side, and on the other, mm. */
function sideLengths(fin: FinSpec): [number, number] {
  const { base, thickness } = fin;
  const reach = thickness * (2 / sidesOf(fin));
  const count = 400;
  let foiled = 0;
  for (let i = 0; i < count; i++) {
    const [a, b] = [(i / count) ** 2, ((i + 1) / count) ** 2];
    foiled += Math.hypot(base * (b - a), reach * (halfThickness(b) - halfThickness(a)));
  }
  return [foiled, sidesOf(fin) === 2 ? foiled : base];
}
