import { expect } from 'vitest';
import { usualSettings } from '../../src/print/tile/format.js';
import type { Clip, Point, ReadPage } from './readPdf.js';

/** Where the diagonals of a page cross their seams, by the letters that stand beside them. */
function marksOf(page: ReadPage): Map<string, Point[]> {
  const marks = new Map<string, Point[]>();
  for (const { points, clip } of page.lines) {
    const [a, b] = points as [Point, Point];
    if (points.length !== 2 || Math.abs(Math.abs(b.x - a.x) - 18) > 0.1 || Math.abs(Math.abs(b.y - a.y) - 18) > 0.1)
      continue;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    const pairs = page.texts.filter(({ text }) => /^[A-Z]{2}$/.test(text));
    const beside = pairs.filter(({ x, y }) => Math.hypot(x - middle.x, y - middle.y) < 13);
    // Where the drawing leaves no room there, letters stand elsewhere along the seam: at the left edge, or as far from
    // the right one as pages overlap.
    const [left, , right] = clip!;
    const isOnSeam = [left, right - usualSettings.overlap].some((x) => Math.abs(x - middle.x) < 0.1);
    const along = isOnSeam ? pairs.filter(({ x }) => Math.abs(x - middle.x) < 20) : [];
    const letters = beside.length > 0 ? beside : along;
    // A hatching line can be as long by chance; it has no letters.
    const name = letters[0]?.text;
    if (name === undefined) continue;
    expect(letters.every(({ text }) => text === name)).toBe(true);
    marks.set(
      name,
      [...(marks.get(name) ?? []), middle].sort((p, q) => p.y - q.y),
    );
  }
  return marks;
}

/** What is left of a page when its strips are cut apart: what each shows, by the rectangle that it is seen in. */
export function cutApart(page: ReadPage): ReadPage[] {
  const isSame = (a: Clip, b: Clip): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.05;
  const all = page.lines.flatMap(({ clip }) => (clip ? [clip] : []));
  const clips = all.filter((clip, i) => all.findIndex((other) => isSame(clip, other)) === i);
  return clips.map((clip): ReadPage => {
    const [left, bottom, right, top] = clip;
    const isIn = ({ x, y }: Point): boolean => x >= left && x <= right && y >= bottom && y <= top;
    return {
      ...page,
      lines: page.lines.filter((line) => line.clip && isSame(line.clip, clip)),
      texts: page.texts.filter(isIn),
    };
  });
}

/** Glues the pages together as a builder does: same letters on same letters. Gives each page's place in the whole. */
export function glue(pages: readonly ReadPage[]): readonly Point[] {
  const marks = pages.map(marksOf);
  const places: (Point | undefined)[] = pages.map((_, i) => (i === 0 ? { x: 0, y: 0 } : undefined));
  for (let round = 0; round < pages.length; round++) {
    marks.forEach((mine, i) => {
      marks.forEach((theirs, j) => {
        if (!places[i] || places[j]) return;
        const letters = [...mine.keys()].find((name) => theirs.has(name));
        if (letters === undefined) return;
        const [here, there] = [mine.get(letters)!, theirs.get(letters)!];
        places[j] = { x: places[i].x + here[0]!.x - there[0]!.x, y: places[i].y + here[0]!.y - there[0]!.y };
        // Both marks of the seam agree: the page is not turned.
        here.forEach((point, k) => {
          expect(places[i]!.x + point.x - there[k]!.x).toBeCloseTo(places[j]!.x, 1);
          expect(places[i]!.y + point.y - there[k]!.y).toBeCloseTo(places[j]!.y, 1);
        });
      });
    });
  }
  expect(places.every((place) => place !== undefined)).toBe(true);
  return places as Point[];
}
