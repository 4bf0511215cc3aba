import type { Point } from '../../contour/point.js';

/** What d3-shape drew, as numbers. */
export interface Recorded {
  readonly runs: Point[][];
  readonly circles: { readonly x: number; readonly y: number; readonly radius: number }[];
}

/**
 * What a maker of d3-shape draws, recorded as numbers: as text it would round to three digits (d3/d3-path#38).
 *
 * @param draw sets the maker's context to the one given, and makes it draw
 */
export function recorded(draw: (context: CanvasRenderingContext2D) => void): Recorded {
  const [runs, circles]: [Point[][], Recorded['circles'][number][]] = [[], []];
  const run = () => runs[runs.length - 1]!;
  const context = {
    moveTo: (x: number, y: number) => void runs.push([[x, y]]),
    lineTo: (x: number, y: number) => void run().push([x, y]),
    closePath: () => undefined,
    // d3-shape moves to where a circle begins and then draws its arc.
    arc: (x: number, y: number, radius: number) => {
      runs.pop();
      circles.push({ x, y, radius });
    },
  };
  draw(context as unknown as CanvasRenderingContext2D);
  return { runs, circles };
}
