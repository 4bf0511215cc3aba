import type { MaxRectsPacker as Packer } from 'maxrects-packer';
import { describe, expect, test } from 'vitest';
import { formatsOf } from '../../../src/print/tile/format.js';
import { layLoose } from '../../../src/print/tile/loose.js';
import { windowBox } from '../../../src/print/tile/nest.js';
import { rollOf, sheetNamed } from '../../../src/print/paper/paper.js';
import { traceOf } from '../../../src/print/trace/trace.js';
import { joinBoxes, overlaps, type Box } from '../../../src/print/trace/box.js';
import { blockSheets } from '../../../src/sheet/blocks/blockSheet.js';
import type { Drawing, Part } from '../../../src/sheet/drawing.js';
import { planOfSample, SAMPLES } from '../../sheet/sample.js';

// The package's own entry is not one that Node imports.
const entry = 'maxrects-packer/dist/maxrects-packer.mjs';
const { MaxRectsPacker } = (await import(/* @vite-ignore */ entry)) as { MaxRectsPacker: typeof Packer };

const PAPERS = [sheetNamed('A4')!, sheetNamed('Letter')!, sheetNamed('A3')!, sheetNamed('A1')!, rollOf(610)];

function boxOf(part: Part, drawing: Drawing): Box {
  const { lines, texts } = traceOf({ ...drawing, ...part });
  return joinBoxes([...lines, ...texts].map(({ box }) => box));
}

/** What is cut along, from the corner of its own box, to a hundredth of a millimetre. */
function cutLine({ shapes }: Part): string {
  const vertices = shapes.flatMap((shape) => (shape.kind === 'path' && shape.layer === 'block' ? shape.vertices : []));
  const [left, low] = [Math.min(...vertices.map(({ x }) => x)), Math.min(...vertices.map(({ y }) => y))];
  return vertices
    .map(({ x, y, bulge = 0 }) =>
      [x - left, y - low, bulge].map((v) => (v + 0).toFixed(2).replace('-0.00', '0.00')).join(),
    )
    .join(' ');
}

describe.each(SAMPLES)('the outlines of %s', (name) => {
  const drawings = blockSheets(planOfSample(name));
  const wanted = drawings.flatMap((drawing) => drawing.apart!);

  test.each(PAPERS)('lie each once at true size, whole on a page where one holds it: $name', (paper) => {
    const { formats } = formatsOf(paper);
    const plan = layLoose('Block outlines', drawings, formats);
    const laid = plan.runs.flatMap(({ placed }) => placed.flatMap(({ drawing }) => drawing.apart!));
    expect(laid.map(cutLine).sort()).toEqual(wanted.map(cutLine).sort());
    expect(plan.sheets).toBe(plan.runs.reduce((sum, { windows }) => sum + windows.length, 0));
    expect(plan.areaBound).toBeLessThanOrEqual(plan.sheets);
    let whole = 0;
    for (const run of plan.runs) {
      const boxes = run.placed.flatMap(({ drawing, up }) =>
        drawing.apart!.map((part) => {
          const box = boxOf(part, drawing);
          return { ...box, minY: box.minY + up, maxY: box.maxY + up };
        }),
      );
      boxes.forEach((box, i) => expect(boxes.slice(i + 1).some((other) => overlaps(box, other))).toBe(false));
      if (run.windows.length > 1) continue;
      const page = windowBox(run, run.windows[0]!);
      for (const box of boxes) {
        expect(box.minX >= page.minX && box.maxX <= page.maxX && box.minY >= page.minY && box.maxY <= page.maxY).toBe(
          true,
        );
        whole++;
      }
    }
    const panes = formats.map((format) => format.paneFor(900));
    const fit = drawings.flatMap((drawing) =>
      drawing.apart!.filter((part) => {
        const { minX, maxX, minY, maxY } = boxOf(part, drawing);
        return panes.some(({ width, height }) => maxX - minX <= width - 6 && maxY - minY <= height - 6);
      }),
    );
    expect(whole).toBeGreaterThanOrEqual(fit.length * 0.9);
  });

  test('take hardly more pages than a general packer of rectangles does', () => {
    const { formats } = formatsOf(sheetNamed('A3')!);
    const singles = layLoose('Block outlines', drawings, formats).runs.filter(({ windows }) => windows.length === 1);
    const { width, height } = singles[0]!.pane;
    const packer = new MaxRectsPacker(width - 6, height - 6, 8, { smart: false, pot: false, square: false });
    for (const { placed } of singles)
      for (const { drawing } of placed)
        for (const part of drawing.apart!) {
          const { minX, maxX, minY, maxY } = boxOf(part, drawing);
          packer.add(maxX - minX, maxY - minY, undefined);
        }
    expect(singles.length).toBeLessThanOrEqual(packer.bins.length + Math.ceil(packer.bins.length / 4));
  });
});
