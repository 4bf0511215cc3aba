import { arcBetween } from './arc.js';
import type { Vertex } from './vertex.js';

/**
 * The support function: how far a closed counter-clockwise contour, arcs included, reaches in a direction, radians from
 * `x`; the largest of its points' distances along it, mm. Its arcs turn left.
 */
export function support(contour: readonly Vertex[], angle: number): number {
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  let far = -Infinity;
  contour.forEach((a, i) => {
    far = Math.max(far, a.x * ux + a.y * uy);
    const arc = arcBetween(a, contour[(i + 1) % contour.length]!);
    if (!arc) return;
    const into = (((angle - arc.start) % TURN) + TURN) % TURN;
    if (into <= arc.sweep) far = Math.max(far, arc.cx * ux + arc.cy * uy + arc.radius);
  });
  return far;
}

const TURN = 2 * Math.PI;
