import type { Point } from '../../contour/point.js';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { VisibleRange } from '../state/bench.js';

/** The width of an element on the screen, px, kept up to date. */
export function useWidth() {
  const ref = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(900);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => setWidth(Math.max(200, element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}

/** The whole board with a little air at its tips. */
export function wholeBoard(length: number): VisibleRange {
  const air = length * 0.02;
  return { from: -air, to: length + air };
}

/** Nothing smaller than this is worth looking at, mm. */
const CLOSEST = 150;

/**
 * A stretch zoomed about a place that stays where it is, within the board.
 *
 * @param by above 1 shows more of the board, below 1 less
 */
export function zoomed(visible: VisibleRange, about: number, by: number, length: number): VisibleRange {
  const whole = wholeBoard(length);
  const size = Math.min(Math.max((visible.to - visible.from) * by, CLOSEST), whole.to - whole.from);
  const share = Math.min(1, Math.max(0, (about - visible.from) / (visible.to - visible.from)));
  return within({ from: about - share * size, to: about + (1 - share) * size }, length);
}

/** A stretch moved along, within the board. */
export function moved(visible: VisibleRange, by: number, length: number): VisibleRange {
  return within({ from: visible.from + by, to: visible.to + by }, length);
}

function within({ from, to }: VisibleRange, length: number): VisibleRange {
  const whole = wholeBoard(length);
  const by = Math.max(whole.from - from, 0) + Math.min(whole.to - to, 0);
  return { from: from + by, to: to + by };
}

/**
 * Points as those of an SVG polygon, `y` up. Unlike a path's, they are no style, which the browser would work out again
 * for each that moves.
 */
export function polygonPoints(points: readonly Point[]): string {
  return points.map(([x, y]) => `${x.toFixed(2)},${(-y).toFixed(2)}`).join(' ');
}

/** Points as an SVG path, `z` or `y` up. */
export function pathOf(points: readonly Point[], closed: boolean): string {
  return (
    points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${(-y).toFixed(2)}`).join('') + (closed ? 'Z' : '')
  );
}
