import type { MaxRectsPacker as Packer } from 'maxrects-packer';
import { describe, expect, test } from 'vitest';
import { rollOf, sheetNamed } from '../../../src/print/paper/paper.js';
import { formatsOf } from '../../../src/print/tile/format.js';
import { windowBox } from '../../../src/print/tile/nest.js';
import { packed, strips } from '../../../src/print/tile/strips.js';
import { traceOf } from '../../../src/print/trace/trace.js';
import { planOfSample, SAMPLES } from '../../sheet/sample.js';
import { fullSizeOf } from '../../papers/wholeSet.js';
import { stripDrawing } from '../strip.js';

// The package's own entry is not one that Node imports.
const entry = 'maxrects-packer/dist/maxrects-packer.mjs';
const { MaxRectsPacker } = (await import(/* @vite-ignore */ entry)) as { MaxRectsPacker: typeof Packer };

const PAPERS = [sheetNamed('A4')!, sheetNamed('Letter')!, sheetNamed('A3')!, sheetNamed('A1')!, rollOf(610)];

/** The fewest pages for a few heights, by trying every way to part them. */
function fewestPages(heights: readonly number[], room: number): number {
  const [first, ...others] = heights;
  if (first === undefined) return 0;
  let fewest = Infinity;
  for (let set = 0; set < 2 ** others.length; set++) {
    const isWith = (_: number, i: number): boolean => (set >> i) % 2 === 1;
    const sum = others.filter(isWith).reduce((a, b) => a + b, first);
    if (sum > room) continue;
    fewest = Math.min(
      fewest,
      1 +
        fewestPages(
          others.filter((h, i) => !isWith(h, i)),
          room,
        ),
    );
  }
  return fewest;
}

test('strips lie on the fewest pages, or one more, as trying all ways to part them finds', () => {
  let seed = 20260504;
  const next = (most: number) => (seed = (seed * 1103515245 + 12345) % 2 ** 31) % most;
  for (let k = 0; k < 40; k++) {
    const windows = Array.from({ length: 9 }, () => ({ height: 30 + next(100) }));
    const pages = packed(windows, { height: 239 });
    const fewest = fewestPages(
      windows.map(({ height }) => height),
      239,
    );
    // First fit decreasing takes at most 11/9 of the fewest and 6/9 (Dosa 2007, "The tight bound of first fit
    // decreasing bin-packing algorithm is FFD(I) <= 11/9 OPT(I) + 6/9").
    expect(pages.length).toBeLessThanOrEqual((11 / 9) * fewest + 6 / 9);
    expect(
      pages
        .flat()
        .map(({ window }) => window)
        .sort((a, b) => a - b),
    ).toEqual(windows.map((_, i) => i));
  }
});

test('neighbours share enough of their edge for a mark, also at the tip of a board', () => {
  for (const lift of [0, 150, 400]) {
    const plan = strips([stripDrawing('face-R1', 3500, 90, lift)], formatsOf(sheetNamed('A4')!).formats)!;
    const { windows } = plan.runs[0]!;
    windows.slice(1).forEach((b, i) => {
      const a = windows[i]!;
      expect(Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y)).toBeGreaterThanOrEqual(18);
    });
  }
});

describe.each(SAMPLES)('the strips of %s', (name) => {
  const drawings = fullSizeOf(planOfSample(name)).filter(({ apart }) => !apart);

  test.each(PAPERS)(
    'show every line that must be there once cut apart, on no more pages than a general packer takes: $name',
    (paper) => {
      for (const kind of ['face', 'pole']) {
        const plan = strips(
          drawings.filter(({ id }) => id.startsWith(kind)),
          formatsOf(paper).formats,
        );
        if (!plan) continue;
        const [run] = plan.runs;
        const { windows, pane, pages, placed } = run!;
        expect(plan.sheets).toBe(pages.length);
        expect(plan.sheets).toBeGreaterThanOrEqual(plan.areaBound);
        const packer = new MaxRectsPacker(pane.width, pane.height, 0, { smart: false, pot: false, square: false });
        for (const { height } of windows) packer.add(pane.width, height, undefined);
        expect(pages.length).toBeLessThanOrEqual(packer.bins.length);
        for (const page of pages) {
          const fromTop = [...page].sort((a, b) => b.y - a.y);
          fromTop.forEach(({ window, y }, i) => {
            const over = fromTop[i - 1]?.y ?? pane.height;
            expect(y + windows[window]!.height).toBeLessThanOrEqual(over);
            expect(y).toBeGreaterThanOrEqual(0);
          });
        }
        const boxes = windows.map((window) => windowBox(run!, window));
        for (const { drawing, up } of placed) {
          const [first, last] = drawing.must ?? [-Infinity, Infinity];
          for (const { points } of traceOf({ ...drawing, captions: [] }).lines) {
            for (let i = 0; i < points.length; i += 2) {
              const [x, y] = [points[i]!, points[i + 1]! + up];
              if (x < first || x > last) continue;
              if (!boxes.some((box) => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY))
                throw new Error(`${drawing.id}: (${x}, ${y}) is on no strip`);
            }
          }
        }
      }
    },
  );
});
