/** An upright rectangle, mm. Empty when `minX > maxX`. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export const emptyBox: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

/** The smallest box around points given as x0, y0, x1, y1, … */
export function boxOfPoints(points: ArrayLike<number>): Box {
  let { minX, minY, maxX, maxY } = emptyBox;
  for (let i = 0; i < points.length; i += 2) {
    minX = Math.min(minX, points[i]!);
    maxX = Math.max(maxX, points[i]!);
    minY = Math.min(minY, points[i + 1]!);
    maxY = Math.max(maxY, points[i + 1]!);
  }
  return { minX, minY, maxX, maxY };
}

export function joinBoxes(boxes: Iterable<Box>): Box {
  let { minX, minY, maxX, maxY } = emptyBox;
  for (const box of boxes) {
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

export const isEmpty = (box: Box): boolean => box.minX > box.maxX;

export const widthOf = (box: Box): number => Math.max(0, box.maxX - box.minX);

export const heightOf = (box: Box): number => Math.max(0, box.maxY - box.minY);

export const overlaps = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

export const shifted = (box: Box, dx: number, dy: number): Box => ({
  minX: box.minX + dx,
  minY: box.minY + dy,
  maxX: box.maxX + dx,
  maxY: box.maxY + dy,
});

export const grown = (box: Box, by: number): Box => ({
  minX: box.minX - by,
  minY: box.minY - by,
  maxX: box.maxX + by,
  maxY: box.maxY + by,
});

/** Whether a box lies wholly in another. */
export const isIn = (box: Box, other: Box): boolean =>
  box.minX >= other.minX && box.maxX <= other.maxX && box.minY >= other.minY && box.maxY <= other.maxY;
