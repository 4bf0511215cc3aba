import type { Vertex } from './vertex.js';
import { arcBetween } from './arc.js';

/**
 * A contour as SVG path data with true arcs (SVG 1.1, 8.3): `M`, `L`, `A`, closed by `Z`.
 *
 * @param place where a vertex lies in the picture. It turns the drawing over (`y` down), so a counter-clockwise arc
 *   sweeps with flag 0.
 * @param number writes a coordinate; the only place where it is rounded.
 */
export function pathData(
  vertices: readonly Vertex[],
  closed: boolean,
  place: (v: Vertex) => { readonly x: number; readonly y: number },
  number: (value: number) => string,
): string {
  const at = (v: Vertex): string => {
    const { x, y } = place(v);
    return `${number(x)} ${number(y)}`;
  };
  const parts: string[] = [];
  const last = closed ? vertices.length : vertices.length - 1;
  vertices.forEach((a, i) => {
    if (i === 0) parts.push(`M${at(a)}`);
    if (i >= last) return;
    const b = vertices[(i + 1) % vertices.length]!;
    const arc = arcBetween(a, b);
    if (arc) {
      const radius = number(arc.radius);
      parts.push(
        `A${radius} ${radius} 0 ${Math.abs(arc.sweep) > Math.PI ? '1' : '0'} ${arc.sweep > 0 ? '0' : '1'} ${at(b)}`,
      );
    } else if (i < vertices.length - 1) {
      parts.push(`L${at(b)}`);
    }
  });
  if (closed && vertices.length > 0) parts.push('Z');
  return parts.join('');
}
