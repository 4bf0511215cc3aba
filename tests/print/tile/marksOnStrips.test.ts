import { describe, expect, test } from 'vitest';
import { printLength } from '../../../src/length/length.js';
import { sheetNamed } from '../../../src/print/paper/paper.js';
import { formatsOf } from '../../../src/print/tile/format.js';
import { mergedInk } from '../../../src/print/tile/ink.js';
import { windowBox } from '../../../src/print/tile/nest.js';
import { writtenOn } from '../../../src/print/tile/runWords.js';
import { seamsOf } from '../../../src/print/tile/seam.js';
import { strips } from '../../../src/print/tile/strips.js';
import { poleMarksOf } from '../../../src/sheet/face/poleMarks.js';
import { usualWords } from '../../../src/words/printed.js';
import { planOfSample, SAMPLES } from '../../sheet/sample.js';
import { fullSizeOf } from '../../papers/wholeSet.js';

/** Strips laid on paper with their words, and which strip each words are printed on. */
function written(name: (typeof SAMPLES)[number], paper: string, kind: string) {
  const plan = planOfSample(name);
  const drawings = fullSizeOf(plan).filter(({ id, apart }) => id.startsWith(kind) && !apart);
  const [run] = strips(drawings, formatsOf(sheetNamed(paper)!).formats)!.runs;
  const seams = seamsOf(mergedInk(run!.placed), run!.windows, run!.pane, 0);
  const texts = writtenOn(run!, seams, usualWords).flatMap(({ trace, isOn, up, drawing }) =>
    run!.windows.flatMap((window, i) => {
      const box = windowBox(run!, window);
      return trace.texts
        .filter((words) => isOn(i, words) && words.box.minX >= box.minX && words.box.maxX <= box.maxX)
        .filter(({ box: { minY, maxY } }) => minY + up >= box.minY && maxY + up <= box.maxY)
        .map((words) => ({ id: drawing.id, text: words.shape.text, box }));
    }),
  );
  return { plan, run: run!, texts };
}

describe.each(SAMPLES)('on the strips of %s', (name) => {
  test.each(['A4', 'Letter'])('a mark of the pole stands on the strip that says its name and place: %s', (paper) => {
    const { plan, texts } = written(name, paper, 'pole');
    const marks = [0, 1].flatMap((parity) => {
      const row = plan.layup.rows.find((each) => each.parity === parity);
      return row ? poleMarksOf(plan, row) : [];
    });
    expect(marks.length).toBeGreaterThan(10);
    for (const { name: mark, s } of marks) {
      for (const words of [mark, printLength(s, plan.job.units)]) {
        const strip = texts.find(({ text, box }) => text === words && s >= box.minX && s <= box.maxX);
        expect(strip, `${words} of ${mark}`).toBeDefined();
      }
    }
  });

  test.each(['A4', 'Letter'])('each strip of a face says which end is the nose: %s', (paper) => {
    const { run, texts } = written(name, paper, 'face');
    const named = run.windows.filter((window) => {
      const box = windowBox(run, window);
      return texts.some(
        (words) => words.box.minX === box.minX && words.box.minY === box.minY && /[◀▶]/.test(words.text),
      );
    });
    expect(named.length).toBe(run.windows.length);
  });
});
