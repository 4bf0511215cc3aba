import { overlaps, type Box } from '../trace/box.js';
import { hasInk, inkNear, type Ink } from './ink.js';
import type { Pane, Window } from './tile.js';

/** Where two pages of a run join. `under` is printed to beyond the line; `over` is cut on it and laid on top. */
export interface Seam {
  /** The same two letters on both pages. */
  readonly letters: string;
  /** `upright` between left and right, `level` between below and above. */
  readonly way: 'upright' | 'level';
  /** Indices into the run's windows. */
  readonly under: number;
  readonly over: number;
  /** The line the pages join on, mm in the run's frame: x of an upright one, y of a level one. */
  readonly at: number;
  /** Where both pages reach along the line. */
  readonly from: number;
  readonly to: number;
  /** Where along the line a position check crosses it: a diagonal with the letters on both sides. */
  readonly marks: readonly SeamMark[];
}

export interface SeamMark {
  /** Middle of the mark along the line. */
  readonly along: number;
  /** Whether the diagonal rises to the right. One of each sort shows a slip in any direction. */
  readonly rising: boolean;
}

/** Half the side of the square that a mark takes, mm. */
export const MARK_REACH = 9;

/** Marks on a level seam keep this far from its ends, mm, where those of upright seams stand. */
const CORNER = 4 * MARK_REACH;

/** Capital letters without I and O, as the fields of a drawing frame (ISO 5457:1999, 4.4); W has no room. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVXYZ';

/** How many seams can have letters of their own. */
export const LETTER_PAIRS = LETTERS.length ** 2;

/** The letters of the n-th seam of a set: AA, AB, …; after the last pair they begin anew. */
export const letterPair = (n: number): string =>
  LETTERS[Math.floor(n / LETTERS.length) % LETTERS.length]! + LETTERS[n % LETTERS.length]!;

/** The seams of a run, in the order of its pages, lettered from the `first` pair on. */
export function seamsOf(ink: Ink, windows: readonly Window[], pane: Pane, first: number): readonly Seam[] {
  const seams: Seam[] = [];
  // Marks keep off those of other seams too: two seams may meet at the middle of an edge.
  const taken: Box[] = [];
  windows.forEach((over, o) => {
    windows.forEach((under, u) => {
      const upright = under.column === over.column - 1;
      const level = under.column === over.column && under.row === over.row - 1;
      if (!upright && !level) return;
      const from = upright ? Math.max(over.y, under.y) : over.x;
      const to = upright ? Math.min(over.y + over.height, under.y + under.height) : over.x + pane.width;
      if (to - from < 2 * MARK_REACH) return;
      const way = upright ? 'upright' : 'level';
      const at = upright ? over.x : over.y;
      const marks = marksOn(ink, way, at, from, to, taken);
      taken.push(...marks.map(({ along }) => squareAt(way, at, along, along)));
      seams.push({ letters: letterPair(first + seams.length), way, under: u, over: o, at, from, to, marks });
    });
  });
  return seams;
}

/** Two marks, as far apart as the seam allows, where the drawing leaves room for them. */
function marksOn(ink: Ink, way: Seam['way'], at: number, from: number, to: number, taken: readonly Box[]): SeamMark[] {
  const inset = way === 'upright' ? MARK_REACH : CORNER;
  const low = from + inset;
  const high = to - inset;
  if (high - low < 2 * MARK_REACH) return [{ along: (low + high) / 2, rising: true }];
  const middle = (low + high) / 2;
  const near = inkNear(ink, squareAt(way, at, low, high));
  const isApart = (along: number): boolean => !taken.some((box) => overlaps(box, squareAt(way, at, along, along)));
  const isFree = (along: number): boolean => isApart(along) && !hasInk(near, squareAt(way, at, along, along));
  // Where the drawing leaves no room for the diagonal, at least for the letters: they stand within these of the seam
  // and the middle.
  const isLegible = (along: number): boolean =>
    isApart(along) && !lettersAt(way, at, along).some((box) => hasInk(near, box));
  const search = (start: number, end: number, step: 1 | -1): number | undefined => {
    const places: number[] = [];
    for (let along = start; (end - along) * step >= 0; along += step) places.push(along);
    return places.find(isFree) ?? places.find(isLegible);
  };
  const first = search(low, middle - MARK_REACH, 1);
  const last = search(high, middle + MARK_REACH, -1);
  const marks = [
    ...(first === undefined ? [] : [{ along: first, rising: true }]),
    ...(last === undefined ? [] : [{ along: last, rising: false }]),
  ];
  if (marks.length > 0) return marks;
  // A seam without any mark would not be found: better one over a line, its letters on none where that can be.
  for (let along = low; along <= high; along++) {
    for (const rising of [true, false]) {
      const boxes = lettersAt(way, at, along).filter((_, i) => [1, 2].includes(i) === rising);
      if (isApart(along) && !boxes.some((box) => hasInk(near, box))) return [{ along, rising }];
    }
  }
  return [{ along: low, rising: true }];
}

/** The square that a mark takes, mm. */
export const markSquare = (way: Seam['way'], at: number, along: number): Box => squareAt(way, at, along, along);

/** The square of a mark, or what marks between two places along a seam take. */
function squareAt(way: Seam['way'], at: number, start: number, end: number): Box {
  const across = { min: at - MARK_REACH, max: at + MARK_REACH };
  const along = { min: start - MARK_REACH, max: end + MARK_REACH };
  const [x, y] = way === 'upright' ? [across, along] : [along, across];
  return { minX: x.min, minY: y.min, maxX: x.max, maxY: y.max };
}

/**
 * What letters may take on either side of a seam, on both sides of the middle of a mark: those of one that rises are
 * the second and the third.
 */
function lettersAt(way: Seam['way'], at: number, along: number): Box[] {
  return [-1, 1].flatMap((side) =>
    [-1, 1].map((beside) => {
      const [a, b] = [at + side * 5, along + beside * 4];
      const [x, y] = way === 'upright' ? [a, b] : [b, a];
      return { minX: x - 4, maxX: x + 4, minY: y - 3, maxY: y + 3 };
    }),
  );
}
