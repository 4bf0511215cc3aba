import { boxOfPoints, type Box } from './box.js';
import { quadIsCrossed, quadsMeet, type Quad } from './quad.js';

/** Side of the squares that lines and words are looked up by, mm. */
const SQUARE = 25;

/** What stands on a drawing already, asked for by place: lines, and the boxes of words. */
export class Ground {
  private readonly lines = new Map<number, number[][]>();
  private readonly words = new Map<number, Quad[]>();

  addLine(points: ArrayLike<number>): void {
    for (let i = 2; i < points.length; i += 2) {
      const line = [points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!];
      for (const square of squaresOf(boxOfPoints(line))) push(this.lines, square, line);
    }
  }

  addWords(corners: Quad): void {
    for (const square of squaresOf(boxOfPoints(corners))) push(this.words, square, corners);
  }

  /** Whether any line runs through a box. */
  isCrossed(corners: Quad): boolean {
    return squaresOf(boxOfPoints(corners)).some((square) =>
      (this.lines.get(square) ?? []).some(([ax, ay, bx, by]) => quadIsCrossed(corners, ax!, ay!, bx!, by!)),
    );
  }

  /** Whether any words stand in a box. */
  isWrittenOn(corners: Quad): boolean {
    return squaresOf(boxOfPoints(corners)).some((square) =>
      (this.words.get(square) ?? []).some((other) => quadsMeet(corners, other)),
    );
  }

  /** Whether a line would run through any words. */
  strikes(points: ArrayLike<number>): boolean {
    for (let i = 2; i < points.length; i += 2) {
      const [ax, ay, bx, by] = [points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!];
      for (const square of squaresOf(boxOfPoints([ax, ay, bx, by]))) {
        if (this.words.get(square)?.some((corners) => quadIsCrossed(corners, ax, ay, bx, by))) return true;
      }
    }
    return false;
  }
}

/** More squares than any drawing is high: a square is named by one number. */
const HIGH = 2 ** 20;

function squaresOf({ minX, minY, maxX, maxY }: Box): number[] {
  const squares: number[] = [];
  for (let i = Math.floor(minX / SQUARE); i * SQUARE <= maxX; i++) {
    for (let j = Math.floor(minY / SQUARE); j * SQUARE <= maxY; j++) squares.push(i * HIGH + j);
  }
  return squares;
}

function push<T>(map: Map<number, T[]>, key: number, value: T): void {
  const known = map.get(key);
  if (known) known.push(value);
  else map.set(key, [value]);
}
