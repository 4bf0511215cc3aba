import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { readJob } from '../../../src/job/whole/read.js';
import { planOf, type Plan } from '../../../src/plan.js';
import type { FileBook } from '../../../src/print/page/leaf.js';
import { planOfSample } from '../../sheet/sample.js';
import { filesOfPlan } from '../../papers/wholeSet.js';
import { overprint, shareWithin, within, wordsOf, type WordsBox } from '../collide.js';
import { printed } from '../printed.js';
import { openPdf, readPdf, type ReadLine, type ReadPage } from '../readPdf.js';

/*
 * The pages of the samples are read back with pdf.js: where words stand, how wide they are by the file's own font, and
 * every line. What a builder acts on is never under a line, under other words, or cut by the edge of a page or by a
 * seam.
 */

/** Boxes of capitals may touch by this, mm: less than the line of a pen. */
const TOUCH = 0.15;
/** What a printer cannot reach along the sheet's edges, mm (print/format.ts). */
const MARGIN = 3;
/** A line that passes this much of itself through words, mm, strikes them. */
const STRUCK = 0.6;

type Spot = readonly [number, number];

/** The straight lines of a path, as far as they are seen. */
function segments({ points, clip }: ReadLine): (readonly [Spot, Spot])[] {
  return points.slice(1).flatMap((to, i) => {
    const [a, b]: [Spot, Spot] = [
      [points[i]!.x, points[i]!.y],
      [to.x, to.y],
    ];
    if (!clip) return [[a, b] as const];
    const [left, bottom, right, top] = clip;
    const frame: WordsBox = {
      text: '',
      height: 0,
      corners: [
        [left, bottom],
        [right, bottom],
        [right, top],
        [left, top],
      ],
    };
    const [from, end] = shareWithin(frame, a, b);
    const at = (t: number): Spot => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    return from < end ? [[at(from), at(end)] as const] : [];
  });
}

/** The board that `new` begins, its guides shared: outlines longer than a page with many numbers on each. */
function starterWithGuides(): Plan {
  const text = readFileSync('templates/starter.yaml', 'utf8').replace('# guides: {', 'guides: {');
  const { job } = readJob(text, 'starter.yaml', () => undefined);
  expect(job!.routing.guides).toBeDefined();
  return planOf(job!);
}

for (const [name, paper, plannedAs] of [
  ['mere-prone', 'A4', () => planOfSample('mere-prone')],
  ['fell-short', 'Letter', () => planOfSample('fell-short')],
  ['tarn-rescue', 'A4', () => planOfSample('tarn-rescue')],
  ['the starter', 'Letter', starterWithGuides],
] as const) {
  describe(`the pages of ${name} on ${paper}`, () => {
    const pages: ReadPage[] = [];
    const words: WordsBox[][] = [];
    const names: string[] = [];

    beforeAll(async () => {
      const { files, print } = filesOfPlan(plannedAs(), { paper });
      const beside: FileBook[] = [];
      for (const { name, set } of files) {
        const { bytes, book } = await printed(set.pages, { ...print, beside }, set.mark);
        if (book) beside.push({ name, book });
        const read = await readPdf(bytes);
        const pdf = await openPdf(bytes);
        pages.push(...read);
        words.push(...(await Promise.all(read.map((_, i) => wordsOf(pdf, i + 1)))));
        names.push(...read.map((_, i) => `${name} page ${String(i + 1)}`));
        await pdf.loadingTask.destroy();
      }
    }, 600_000);

    test('print no words over others', () => {
      const found = words.flatMap((boxes, i) =>
        boxes.flatMap((a, k) =>
          boxes
            .slice(k + 1)
            .filter((b) => overprint(a, b) > TOUCH)
            .map((b) => `${names[i]!}: "${a.text}" and "${b.text}"`),
        ),
      );
      expect(found).toEqual([]);
    });

    test('keep all words on the paper that a printer reaches', () => {
      const found = words.flatMap((boxes, i) =>
        boxes
          .filter(({ corners }) =>
            corners.some(
              ([x, y]) => x < MARGIN || y < MARGIN || x > pages[i]!.width - MARGIN || y > pages[i]!.height - MARGIN,
            ),
          )
          .map(({ text }) => `${names[i]!}: "${text}"`),
      );
      expect(found).toEqual([]);
    });

    test('let no line run through words: no seam, no edge of a page, no line to cut, rout or keep clear of', () => {
      const found = words.flatMap((boxes, i) =>
        boxes
          .filter((box) => pages[i]!.lines.some((line) => segments(line).some(([a, b]) => within(box, a, b) > STRUCK)))
          .map(({ text }) => `${names[i]!}: "${text}"`),
      );
      expect(found).toEqual([]);
    });
  });
}
