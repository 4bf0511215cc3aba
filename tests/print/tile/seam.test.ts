import { expect, test } from 'vitest';
import { inkOf } from '../../../src/print/tile/ink.js';
import { MARK_REACH, seamsOf } from '../../../src/print/tile/seam.js';
import { traceOf } from '../../../src/print/trace/trace.js';
import { line } from '../../../src/sheet/primitives.js';

const pane = { width: 180, height: 260, overlap: 10 };
const ink = inkOf(traceOf({ id: 'sheet', title: 'Sheet', notes: [], shapes: [line('outline', [0, 0], [300, 300])] }));

/** The marks of the seam of two pages side by side that share so much of their edge, mm. */
function marksAlong(shared: number): readonly number[] {
  const windows = [
    { column: 0, row: 0, x: 0, y: 0, height: pane.height },
    { column: 1, row: 0, x: 170, y: pane.height - shared, height: pane.height },
  ];
  return seamsOf(ink, windows, pane, 0).flatMap(({ marks }) => marks.map(({ along }) => along));
}

test('a seam of any length has its marks within it, also where two just have room (the smallest case of a set of papers that never ended)', () => {
  for (let shared = 2 * MARK_REACH; shared <= 100; shared++) {
    const marks = marksAlong(shared);
    expect(marks.length, `${shared} mm`).toBeGreaterThan(0);
    for (const along of marks) {
      expect(along).toBeGreaterThanOrEqual(pane.height - shared + MARK_REACH);
      expect(along).toBeLessThanOrEqual(pane.height - MARK_REACH);
    }
  }
});
