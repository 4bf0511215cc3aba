import { momentsOf } from '../contour/area.js';
import type { Point } from '../contour/point.js';
import type { FinSpec } from '../job/spec/finish.js';

/** Both edges of a fin from base to tip, `y` rising from 0 to its depth. Fin frame, mm. */
export interface FinOutline {
  readonly leading: readonly Point[];
  readonly trailing: readonly Point[];
}

/** Straight lines that stand for an edge: they keep within a few hundredths of a millimetre of it. */
const LINES = 120;

export function outlineOf({ base, tip, depth, build }: FinSpec): FinOutline {
  const { rake, leading, trailing } = build!.outline;
  const first = base / 2 + rake - tip / 2;
  const through = (points: readonly Point[], from: number, to: number): Point[] => [[from, 0], ...points, [to, depth]];
  return {
    leading: typeof leading === 'number' ? edge(0, first, depth, leading, -1) : through(leading, 0, first),
    trailing:
      typeof trailing === 'number' ? edge(base, first + tip, depth, trailing, 1) : through(trailing, base, first + tip),
  };
}

/**
 * An edge from the base at `from` to the tip at `to`: a quarter of a superellipse that reaches `fullness` of the way
 * along the diagonal of its box toward the corner that lies `outward` (−1 to the front, 1 to the back).
 *
 * Source: G. Lamé's curve, |X|ⁿ + |Y|ⁿ = 1, whose point on the diagonal is 2^(−1/n).
 */
function edge(from: number, to: number, depth: number, fullness: number, outward: 1 | -1): Point[] {
  const isHollow = fullness < 0.5;
  const power = Math.log(0.5) / Math.log(isHollow ? 1 - fullness : fullness);
  // Whether the edge sets off square to the base and arrives along the tip, or the other way round.
  const risesFirst = (Math.sign(from - to) === outward) !== isHollow;
  return Array.from({ length: LINES + 1 }, (_, i): Point => {
    const angle = (i / LINES) * (Math.PI / 2);
    const [sin, cos] = [Math.sin(angle) ** (2 / power), Math.cos(angle) ** (2 / power)];
    const [along, up] = i === LINES ? [1, 1] : risesFirst ? [1 - cos, sin] : [sin, 1 - cos];
    return [from + (to - from) * along, depth * up];
  }).filter(([, y], i, all) => i === 0 || y > all[i - 1]![1]);
}

/** Where an edge stands at a height over the base. */
export function edgeAt(edge: readonly Point[], y: number): number {
  const next = Math.max(
    1,
    edge.findIndex(([, each]) => each >= y),
  );
  const [x0, y0] = edge[next - 1]!;
  const [x1, y1] = edge[next]!;
  return x0 + ((x1 - x0) * (y - y0)) / (y1 - y0);
}

/** Where the chord at a height begins, and its length, mm. */
export function chordAt(
  { leading, trailing }: FinOutline,
  y: number,
): { readonly from: number; readonly length: number } {
  const from = edgeAt(leading, y);
  return { from, length: edgeAt(trailing, y) - from };
}

/** The closed outline, counter-clockwise with `y` up. */
export function contourOf({ leading, trailing }: FinOutline): Point[] {
  return [...trailing, ...[...leading].reverse()];
}

/** Area, mm², and centre of area of the whole outline. */
export function areaAndCentre(outline: FinOutline): { readonly area: number; readonly x: number; readonly y: number } {
  return momentsOf(contourOf(outline).map(([x, y]) => ({ x, y })));
}
