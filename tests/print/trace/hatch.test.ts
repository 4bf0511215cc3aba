import { expect, it } from 'vitest';
import type { Drawing } from '../../../src/sheet/drawing.js';
import { hatchOf, strokeOutside } from '../../../src/print/trace/hatch.js';
import { traceOf } from '../../../src/print/trace/trace.js';

const square = (hatch: 'light' | 'medium' | 'dark', text?: string): Drawing => ({
  id: 'a',
  title: '',
  notes: [],
  shapes: [
    {
      kind: 'path',
      layer: 'chamber',
      closed: true,
      hatch,
      vertices: [
        { x: 0, y: 0 },
        { x: 100, y: 0 },
        { x: 100, y: 100 },
        { x: 0, y: 100 },
      ],
    },
    ...(text ? [{ kind: 'text', layer: 'label', text, x: 50, y: 50, height: 10, align: 'centre' } as const] : []),
  ],
});

const total = (drawing: Drawing): number =>
  hatchOf(traceOf(drawing)).reduce((sum, { x1, y1, x2, y2 }) => sum + Math.hypot(x2 - x1, y2 - y1), 0);

it('fills an area with lines as long as the area over their distance', () => {
  // Lines d apart that fill an area A have the length A / d; each square is 100 by 100 mm.
  for (const [tone, apart] of [
    ['light', 7],
    ['medium', 4],
    ['dark', 2],
  ] as const) {
    expect(total(square(tone)) / (10_000 / apart)).toBeGreaterThan(0.95);
    expect(total(square(tone)) / (10_000 / apart)).toBeLessThan(1.05);
  }
});

it('stays inside the shape and clear of words', () => {
  const strokes = hatchOf(traceOf(square('dark', 'R2-07')));
  for (const { x1, y1, x2, y2 } of strokes) {
    for (const value of [x1, y1, x2, y2]) {
      expect(value).toBeGreaterThan(-1e-9);
      expect(value).toBeLessThan(100 + 1e-9);
    }
    // The word is 5 letters of 10 mm; its middle is the middle of the square.
    for (const t of [0, 0.25, 0.5, 0.75, 1]) {
      const [x, y] = [x1 + t * (x2 - x1), y1 + t * (y2 - y1)];
      expect(Math.abs(x - 50) < 20 && Math.abs(y - 50) < 5).toBe(false);
    }
  }
});

it('a line is cut where a box lies over it', () => {
  const left = strokeOutside({ x1: 0, y1: 0, x2: 100, y2: 100 }, [{ minX: 20, maxX: 60, minY: 30, maxY: 50 }]);
  expect(left).toEqual([
    { x1: 0, y1: 0, x2: 30, y2: 30 },
    { x1: 50, y1: 50, x2: 100, y2: 100 },
  ]);
});
