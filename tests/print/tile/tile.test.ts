import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../src/sheet/drawing.js';
import { formatsOf } from '../../../src/print/tile/format.js';
import { inkedArea, inkOf, mergedInk, type Ink } from '../../../src/print/tile/ink.js';
import { nest } from '../../../src/print/tile/nest.js';
import { rollOf, sheetNamed } from '../../../src/print/paper/paper.js';
import { seamsOf } from '../../../src/print/tile/seam.js';
import { tile, type Pane, type Window } from '../../../src/print/tile/tile.js';
import { traceOf } from '../../../src/print/trace/trace.js';
import { stripDrawing } from '../strip.js';

const ink = (drawing: Drawing): Ink => inkOf(traceOf(drawing));

/** The same question answered by trying every shift with plain loops over every millimetre of the drawing. */
function fewestByTrial(drawn: Ink, pane: Pane, mostRows = Infinity): number {
  let fewest = Infinity;
  for (let shift = 0; shift < pane.width - pane.overlap; shift++) {
    let pages = 0;
    for (let start = -shift; start < drawn.low.length; start += pane.width - pane.overlap) {
      // The overlap of the page before already shows the end.
      if (start > -shift && start + pane.overlap >= drawn.low.length) break;
      let [low, high] = [Infinity, -Infinity];
      for (let x = Math.max(0, start); x < Math.min(drawn.low.length, start + pane.width); x++) {
        low = Math.min(low, drawn.low[x]!);
        high = Math.max(high, drawn.high[x]!);
      }
      if (low > high) continue;
      let rows = 1;
      while (rows * (pane.height - pane.overlap) + pane.overlap < Math.ceil(high) - Math.floor(low)) rows++;
      pages += rows > mostRows ? Infinity : rows;
    }
    fewest = Math.min(fewest, pages);
  }
  return fewest;
}

/** Drawings one under the other, 10 mm apart where they come nearest. */
function stacked(inks: readonly Ink[]): Ink {
  let all = inks[0]!;
  for (const next of inks.slice(1)) {
    let up = Infinity;
    next.high.forEach((high, i) => {
      const over = all.low[next.from + i - all.from];
      if (over !== undefined) up = Math.min(up, over - high);
    });
    all = mergedInk([
      { ink: all, up: 0 },
      { ink: next, up: Math.floor(up - 10) },
    ]);
  }
  return all;
}

/** Whether a point of the drawing is on some page. */
const shown = (windows: readonly Window[], pane: Pane, x: number, y: number): boolean =>
  windows.some((w) => x >= w.x && x <= w.x + pane.width && y >= w.y && y <= w.y + pane.height);

const board = fc.record({
  length: fc.integer({ min: 150, max: 3600 }),
  thick: fc.integer({ min: 20, max: 160 }),
  lift: fc.integer({ min: 0, max: 400 }),
});
const panes = fc.record({
  width: fc.integer({ min: 150, max: 420 }),
  height: fc.integer({ min: 105, max: 400 }),
  overlap: fc.integer({ min: 5, max: 20 }),
});

describe('tiling', () => {
  it('takes the fewest sheets over every shift, as plain trial of all of them finds', () => {
    fc.assert(
      fc.property(board, panes, ({ length, thick, lift }, pane) => {
        const drawn = ink(stripDrawing('face-R1', length, thick, lift));
        const windows = tile(drawn, pane)!;
        const trial = fewestByTrial(drawn, pane);
        // Trial does not leave out blank sheets between the rows of a stack; tiling does.
        const rows = Math.max(...windows.map((window) => window.row));
        if (rows < 2) expect(windows.length).toBe(trial);
        else expect(windows.length).toBeLessThanOrEqual(trial);
      }),
      { numRuns: 60, seed: 20260504 },
    );
  });

  it('shows every point of every line on some sheet', () => {
    fc.assert(
      fc.property(board, panes, ({ length, thick, lift }, pane) => {
        const drawing = stripDrawing('face-R1', length, thick, lift);
        const windows = tile(ink(drawing), pane)!;
        for (const { points } of traceOf(drawing).lines) {
          for (let i = 2; i < points.length; i += 2) {
            for (const t of [0, 0.3, 0.7]) {
              const x = points[i - 2]! + t * (points[i]! - points[i - 2]!);
              const y = points[i - 1]! + t * (points[i + 1]! - points[i - 1]!);
              if (!shown(windows, pane, x, y)) throw new Error(`(${String(x)}, ${String(y)}) is on no sheet`);
            }
          }
        }
      }),
      { numRuns: 60, seed: 20260505 },
    );
  });

  it('steps up with the rocker: one row of A4 lying carries a strip whose ends are lifted by 150 mm', () => {
    const pane = formatsOf(sheetNamed('A4')!).formats[0]!.paneFor(0);
    const strip = ink(stripDrawing('face-R1', 3500, 90, 150));
    const windows = tile(strip, pane)!;
    expect(Math.max(...strip.high) - Math.min(...strip.low)).toBeGreaterThan(150);
    expect(new Set(windows.map((window) => window.y)).size).toBeGreaterThan(1);
    expect(windows.every((window) => window.row === 0)).toBe(true);
    expect(windows).toHaveLength(14);
  });

  it('leaves out sheets with nothing on them', () => {
    const ends = (x: number): Drawing['shapes'][number] => ({ kind: 'circle', layer: 'dot', x, y: 0, radius: 20 });
    const windows = tile(ink({ id: 'a', title: '', notes: [], shapes: [ends(0), ends(3000)] }), {
      width: 250,
      height: 160,
      overlap: 10,
    });
    expect(windows).toHaveLength(2);
    const ring: Drawing = {
      id: 'b',
      title: '',
      notes: [],
      shapes: [{ kind: 'circle', layer: 'dot', x: 0, y: 0, radius: 600 }],
    };
    const pane = { width: 260, height: 260, overlap: 10 };
    const around = tile(ink(ring), pane)!;
    // Five by five sheets, and the drawing is a line: those in the middle are blank.
    expect(around.length).toBeLessThanOrEqual(16);
    expect(shown(around, pane, 0, 0)).toBe(false);
  });
});

describe('nesting', () => {
  const strips = [110, 100, 90, 80, 70].map((thick, i) => stripDrawing(`face-R${String(i + 1)}`, 3400, thick, 150));
  const { formats } = formatsOf(sheetNamed('A4')!);

  it('takes the fewest sheets of all ways to share runs, over both ways the paper lies and every shift', () => {
    const { sheets } = nest(strips, formats);
    /** Every way to part the list into groups of neighbours, by trial. */
    const partitions = (n: number): number[][] =>
      n === 0
        ? [[]]
        : Array.from({ length: n }, (_, i) => i + 1).flatMap((k) => partitions(n - k).map((rest) => [k, ...rest]));
    let fewest = Infinity;
    for (const sizes of partitions(strips.length)) {
      let [begin, count] = [0, 0];
      for (const size of sizes) {
        const group = stacked(strips.slice(begin, begin + size).map(ink));
        count += Math.min(...formats.map((format) => fewestByTrial(group, format.paneFor(0), size > 1 ? 1 : Infinity)));
        begin += size;
      }
      fewest = Math.min(fewest, count);
    }
    expect(sheets).toBe(fewest);
  });

  it('never reports fewer sheets than the area of the drawings fills', () => {
    for (const paper of [
      sheetNamed('A4')!,
      sheetNamed('Letter')!,
      sheetNamed('A1')!,
      sheetNamed('Arch D')!,
      rollOf(914.4),
    ]) {
      const found = nest(strips, formatsOf(paper).formats);
      const largest = Math.max(...found.runs.map(({ pane }) => pane.width * pane.height));
      const area = strips.reduce((sum, strip) => sum + inkedArea(ink(strip)), 0);
      expect(found.areaBound).toBeLessThanOrEqual(found.sheets);
      expect(found.sheets * largest).toBeGreaterThanOrEqual(area);
    }
  });

  it('keeps drawings that share sheets at least 8 mm apart, and stations under one another', () => {
    for (const run of nest(strips, formats).runs) {
      run.placed.slice(1).forEach((below, i) => {
        const above = run.placed[i]!;
        for (let x = 0; x < below.ink.low.length; x++) {
          const over = below.ink.from + x - above.ink.from;
          if (over < 0 || over >= above.ink.low.length) continue;
          expect(above.ink.low[over]! + above.up - (below.ink.high[x]! + below.up)).toBeGreaterThanOrEqual(8);
        }
      });
    }
  });

  it('puts all strips on one long sheet of a roll that is wide enough', () => {
    expect(nest(strips, formatsOf(rollOf(914.4)).formats).sheets).toBe(1);
  });

  it('splits a strip longer than a PDF page may be: 5080 mm (ISO 32000-1, Annex C)', () => {
    const { runs } = nest([stripDrawing('face-R1', 6000, 110, 150)], formatsOf(rollOf(610)).formats);
    expect(runs[0]!.windows).toHaveLength(2);
    expect(runs[0]!.pane.width).toBeLessThan(5080);
  });
});

describe('seams', () => {
  it('carry one pair of letters each, and marks on them that both sheets show whole or cut at the line', () => {
    const { runs } = nest([stripDrawing('face-R1', 3500, 110, 300)], formatsOf(sheetNamed('A4')!).formats);
    const [run] = runs;
    const { windows, pane } = run!;
    const seams = seamsOf(mergedInk(run!.placed), windows, pane, 0);
    expect(new Set(seams.map(({ letters }) => letters)).size).toBe(seams.length);
    // Every sheet but the first lies over another.
    for (let i = 1; i < windows.length; i++) expect(seams.some((seam) => seam.over === i)).toBe(true);
    for (const { marks, way, at, under, over } of seams) {
      expect(marks.length).toBeGreaterThan(0);
      for (const { along } of marks) {
        const [x, y] = way === 'upright' ? [at, along] : [along, at];
        for (const window of [windows[under]!, windows[over]!]) expect(shown([window], pane, x, y)).toBe(true);
      }
    }
  });
});
