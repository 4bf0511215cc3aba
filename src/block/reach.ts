import type { Vertex } from '../contour/vertex.js';

/**
 * How far a closed counter-clockwise contour, arcs included, reaches in a direction: the largest of its points'
 * distances along it, mm.
 */
export function reach(contour: readonly Vertex[], angle: number): number {
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  let far = -Infinity;
  contour.forEach((a, i) => {
    far = Math.max(far, a.x * ux + a.y * uy);
    if (!a.bulge) return;
    const arc = arcOf(a, contour[(i + 1) % contour.length]!, a.bulge);
    const into = (((angle - arc.start) % TURN) + TURN) % TURN;
    if (into <= arc.sweep) far = Math.max(far, arc.x * ux + arc.y * uy + arc.radius);
  });
  return far;
}

/** Length of a closed contour, arcs included, mm. */
export function perimeter(contour: readonly Vertex[]): number {
  return contour.reduce((sum, a, i) => {
    const b = contour[(i + 1) % contour.length]!;
    const arc = a.bulge ? arcOf(a, b, a.bulge) : undefined;
    return sum + (arc ? arc.radius * arc.sweep : Math.hypot(b.x - a.x, b.y - a.y));
  }, 0);
}

const TURN = 2 * Math.PI;

/** An arc that turns left (a positive bulge is the tangent of a quarter of its turn). */
function arcOf(a: Vertex, b: Vertex, bulge: number) {
  const sweep = 4 * Math.atan(bulge);
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const away = 1 / Math.tan(sweep / 2) / 2;
  const [x, y] = [(a.x + b.x) / 2 - away * dy, (a.y + b.y) / 2 + away * dx];
  return { x, y, sweep, radius: Math.hypot(a.x - x, a.y - y), start: Math.atan2(a.y - y, a.x - x) };
}
