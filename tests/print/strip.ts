import type { Drawing, Shape } from '../../src/sheet/drawing.js';
import type { Vertex } from '../../src/contour/vertex.js';

/**
 * A made-up face of a strip: `length` long, `thick` in the middle, nose and tail lifted by `lift`, with chambers and
 * words.
 */
export function stripDrawing(id = 'face-R2', length = 3500, thick = 110, lift = 150): Drawing {
  const rocker = (x: number): number => lift * Math.abs((2 * x) / length - 1) ** 2.4;
  const half = (x: number): number => (thick / 2) * Math.max(0.02, 1 - Math.abs((2 * x) / length - 1) ** 4);
  const bottom: Vertex[] = [];
  const deck: Vertex[] = [];
  for (let i = 0; i <= 200; i++) {
    const x = (length * i) / 200;
    bottom.push({ x, y: rocker(x) });
    deck.push({ x, y: rocker(x) + 2 * half(x) });
  }
  const shapes: Shape[] = [{ kind: 'path', layer: 'outline', closed: true, vertices: [...bottom, ...deck.reverse()] }];
  let number = 0;
  for (let centre = 305; centre < length - 250; centre += 305) {
    number++;
    const [x1, x2] = [centre - 120, centre + 120];
    const low = Math.max(rocker(x1), rocker(x2)) + 13;
    const high = Math.min(rocker(x1) + 2 * half(x1), rocker(x2) + 2 * half(x2)) - 13;
    if (high - low < 25) continue;
    shapes.push({
      kind: 'path',
      layer: 'chamber',
      closed: true,
      vertices: rounded(x1, low, x2, high, 8),
      hatch: 'light',
    });
    shapes.push({
      kind: 'text',
      layer: 'label',
      text: `R2-${String(number).padStart(2, '0')}`,
      x: centre,
      y: (low + high) / 2,
      height: 14,
      align: 'centre',
    });
    shapes.push({ kind: 'circle', layer: 'dot', x: centre + 152.5, y: (low + high) / 2, radius: 9, hatch: 'dark' });
    shapes.push(cross(centre, rocker(centre) + half(centre)));
  }
  return {
    id,
    title: `Face ${id.replace('face-', '')} — č ≥ 19 mm`,
    notes: ['piece R, inboard face', 'seen from the joint'],
    shapes,
  };
}

/** A rectangle with rounded corners: four straight sides and four true arcs. */
export function rounded(x1: number, y1: number, x2: number, y2: number, r: number): Vertex[] {
  const bulge = Math.tan(Math.PI / 8);
  return [
    { x: x1 + r, y: y1 },
    { x: x2 - r, y: y1, bulge },
    { x: x2, y: y1 + r },
    { x: x2, y: y2 - r, bulge },
    { x: x2 - r, y: y2 },
    { x: x1 + r, y: y2, bulge },
    { x: x1, y: y2 - r },
    { x: x1, y: y1 + r, bulge },
  ];
}

const cross = (x: number, y: number): Shape => ({
  kind: 'path',
  layer: 'mark',
  closed: false,
  vertices: [
    { x, y: y - 45 },
    { x, y: y + 45 },
  ],
});
