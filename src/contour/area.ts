import type { Vertex } from './vertex.js';

/**
 * Area within a closed contour, arcs included, mm²; negative where it runs clockwise. Shoelace formula and circular
 * segments.
 */
export function areaOf(contour: readonly Vertex[]): number {
  return momentsOf(contour).area;
}

/** Area, mm², and centre of area of a closed counter-clockwise contour, arcs included. */
export function momentsOf(contour: readonly Vertex[]): { area: number; x: number; y: number } {
  let area = 0;
  let mx = 0;
  let my = 0;
  contour.forEach((a, i) => {
    const b = contour[(i + 1) % contour.length]!;
    const cross = (a.x * b.y - b.x * a.y) / 2;
    area += cross;
    mx += (cross * (a.x + b.x)) / 3;
    my += (cross * (a.y + b.y)) / 3;
    if (!a.bulge) return;
    const angle = 4 * Math.atan(a.bulge);
    const chord = Math.hypot(b.x - a.x, b.y - a.y);
    const radius = chord / 2 / Math.sin(angle / 2);
    const segment = (radius * radius * (angle - Math.sin(angle))) / 2;
    // Centre of a circular segment lies (2/3) r sin³(θ/2) / (θ − sin θ) · 2 from the circle's centre.
    const out = (4 * radius * Math.sin(angle / 2) ** 3) / (3 * (angle - Math.sin(angle)));
    const beyond = out - radius * Math.cos(angle / 2);
    const nx = (b.y - a.y) / chord;
    const ny = (a.x - b.x) / chord;
    area += segment;
    mx += segment * ((a.x + b.x) / 2 + beyond * nx);
    my += segment * ((a.y + b.y) / 2 + beyond * ny);
  });
  return { area, x: mx / area, y: my / area };
}
