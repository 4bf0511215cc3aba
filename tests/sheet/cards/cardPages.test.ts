import { describe, expect, test } from 'vitest';
import { rollOf, sheetNamed, type Paper } from '../../../src/print/paper/paper.js';
import { cardSheets } from '../../../src/sheet/cards/cardSheets.js';
import type { PathShape, Shape } from '../../../src/sheet/drawing.js';
import { printed } from '../../print/printed.js';
import { readPdf } from '../../print/readPdf.js';
import { setOf } from '../../papers/wholeSet.js';
import { planOfSample, SAMPLES } from '../sample.js';
import { pointsAlong } from './bruteFace.js';

/** The line to rout is 0.7 mm wide (ISO 128-2, group 0.7), a card's finished edges 0.35 mm and broken. */
const ROUT = 0.7;
/** What a steel rule shows, mm. */
const TRUE = 0.05;

function sizeOf(points: readonly (readonly [number, number])[]): readonly [number, number] {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

const papers: readonly (readonly [(typeof SAMPLES)[number], Paper])[] = [
  ...SAMPLES.map((name) => [name, sheetNamed('A4')!] as const),
  ['tarn-rescue', sheetNamed('Letter')!],
  ['tarn-rescue', rollOf(610)],
];

describe('the pages of the corner cards', () => {
  test.each(papers)('of %s show every card whole and at true size on %o', async (name, paper) => {
    const plan = planOfSample(name);
    const set = setOf(plan, { only: ['cards'] });
    const { bytes, findings } = await printed(set.pages, { paper }, set.mark);
    expect(findings).toEqual([]);
    const pages = await readPdf(bytes);
    const read = pages.flatMap(({ lines }) =>
      lines
        .filter(({ width, points, dashed }) => Math.abs(width - ROUT) < 0.01 && !dashed && points.length > 8)
        .map(({ points }) => sizeOf(points.map(({ x, y }) => [x, y]))),
    );
    const isRout = (shape: Shape): shape is PathShape => shape.kind === 'path' && shape.layer === 'chamber';
    const drawn = cardSheets(plan)
      .flatMap(({ shapes }) => shapes.filter(isRout))
      .map(({ vertices, closed }) => sizeOf(pointsAlong(vertices, closed)));
    expect(read).toHaveLength(drawn.length);
    for (const [wide, tall] of drawn) {
      const i = read.findIndex(([w, t]) => Math.abs(w - wide) < TRUE && Math.abs(t - tall) < TRUE);
      expect([wide, tall, i >= 0]).toEqual([wide, tall, true]);
      read.splice(i, 1);
    }
  });

  test('are on request, alone or with others, and bring the marking table of every face', () => {
    const plan = planOfSample('tarn-rescue');
    expect(setOf(plan).pages.some(({ title }) => title.includes('orner cards'))).toBe(false);
    const titles = setOf(plan, { only: ['cards'] }).pages.map(({ title }) => title);
    for (const row of ['C1', 'R1, L1', 'R2, L2', 'R3, L3', 'R4, L4', 'R5, L5'])
      expect(titles).toContain(`Marking table, row ${row}`);
    expect(titles).toContain('Marking table, row C1, from face FC-left');
  });
});
