import { boxOfPoints, grown, overlaps, shifted, type Box } from '../trace/box.js';
import { Ground } from '../trace/ground.js';
import { cornersOfBox } from '../trace/quad.js';
import type { Written } from './runWords.js';
import { markSquare, MARK_REACH, type Seam } from './seam.js';
import { letterAt, seamDiagonals, seamLetters, type Word } from './seamMark.js';

/** How far from a seam anything may touch its letters, mm. */
const NEAR = 24;
/**
 * Letters that find no place at a mark are looked for along their seam in such steps, and keep so far from its ends,
 * mm.
 */
const STEP = 1.5;
const FROM_END = 3.2;
const AWAY = [5, 9, 13, 17] as const;
/** Letters on both sides of a seam keep so far from each other where they are not at a mark, mm. */
const APART = 8;

/** What of a seam is printed: its letters, on both sides, and the diagonals of its marks. */
export interface SeamWords {
  readonly letters: readonly Word[];
  readonly diagonals: readonly (readonly [number, number, number, number])[];
}

/**
 * Letters and marks of seams give way to what the drawings say: a mark on which words stand is left out, and letters
 * that a line or words would run through stand at the other mark alone, or elsewhere along their seam.
 */
export function seamWordsOn(seams: readonly Seam[], written: readonly Written[]): SeamWords[] {
  const squaresOf = (seam: Seam): Box[] => seam.marks.map(({ along }) => markSquare(seam.way, seam.at, along));
  const found: Box[] = [];
  return seams.map((seam): SeamWords => {
    const used = [...seams.filter((other) => other !== seam).flatMap(squaresOf), ...found];
    const ground = groundNear(seam, seams, written);
    const marks = seam.marks.filter(
      ({ along }) => !ground.isWrittenOn(cornersOfBox(markSquare(seam.way, seam.at, along))),
    );
    const kept = { ...seam, marks };
    const diagonals = seamDiagonals(kept);
    for (const diagonal of diagonals) ground.addLine(diagonal);
    const isFree = ({ box }: Word): boolean => {
      const corners = cornersOfBox(box);
      return !ground.isWrittenOn(corners) && !ground.isCrossed(corners);
    };
    const lettersOn = (side: number, others: readonly Word[]): Word[] => {
      const atMarks = seamLetters(kept, side).filter(
        (word) => isFree(word) && !found.some((box) => overlaps(box, word.box)),
      );
      if (atMarks.length > 0) return atMarks;
      const free = alongSeam(seam, side).filter((word) => isFree(word) && !used.some((box) => overlaps(box, word.box)));
      // Beside those on the other side they would be read as one word.
      const isApart = ({ box }: Word): boolean => !others.some((other) => overlaps(grown(other.box, APART), box));
      const elsewhere = free.find(isApart) ?? free[0];
      // A seam without letters would not be found: at the last they stand where they may.
      return elsewhere ? [elsewhere] : seamLetters(seam, side).slice(0, 1);
    };
    const before = lettersOn(-1, []);
    const letters = [...before, ...lettersOn(1, before)];
    found.push(...letters.map(({ box }) => box));
    return { letters, diagonals };
  });
}

/** Every place for letters along a seam, from its middle outward, and near it before further off. */
function alongSeam(seam: Seam, side: number): Word[] {
  const middle = (seam.from + seam.to) / 2;
  const reach = (seam.to - seam.from) / 2 - FROM_END;
  return AWAY.flatMap((away) => {
    const words: Word[] = [];
    for (let off = 0; off <= reach; off += STEP) {
      for (const along of off === 0 ? [middle] : [middle - off, middle + off])
        words.push(letterAt(seam, side, along, away));
    }
    return words;
  });
}

/** What stands near a seam: words and lines of the drawings, and all seams. */
function groundNear(seam: Seam, seams: readonly Seam[], written: readonly Written[]): Ground {
  const { way, at, from, to } = seam;
  const band: Box =
    way === 'upright'
      ? { minX: at - NEAR, maxX: at + NEAR, minY: from - MARK_REACH, maxY: to + MARK_REACH }
      : { minX: from - MARK_REACH, maxX: to + MARK_REACH, minY: at - NEAR, maxY: at + NEAR };
  const ground = new Ground();
  for (const { trace, up } of written) {
    const own = shifted(band, 0, -up);
    for (const { corners, box } of trace.texts) {
      if (overlaps(box, own)) ground.addWords(corners.map((value, i) => (i % 2 === 0 ? value : value + up)));
    }
    for (const { points, box } of trace.lines) {
      if (!overlaps(box, own)) continue;
      for (let i = 2; i < points.length; i += 2) {
        const piece = [points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!];
        if (overlaps(boxOfPoints(piece), own)) ground.addLine([piece[0]!, piece[1]! + up, piece[2]!, piece[3]! + up]);
      }
    }
  }
  for (const { way: theirs, at: line, from: start, to: end } of seams) {
    ground.addLine(theirs === 'upright' ? [line, start, line, end] : [start, line, end, line]);
  }
  return ground;
}
