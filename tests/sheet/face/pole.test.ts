import { describe, expect, test } from 'vitest';
import { parseLength } from '../../../src/length/length.js';
import type { PathShape } from '../../../src/sheet/drawing.js';
import { poleTable, storyPole } from '../../../src/sheet/face/pole.js';
import { planOfSample } from '../sample.js';
import { smallPlan } from '../smallPlan.js';

describe('the story pole', () => {
  test('is as long as the board and carries its marks at the places of the grid', () => {
    // Datum 150, pitch 300, 1200 mm long: marks at 150, 450, 750, 1050 (worked out by hand).
    const pole = storyPole(smallPlan());
    const outline = pole.shapes.filter((s): s is PathShape => s.kind === 'path' && s.layer === 'outline');
    const [stick, ...marks] = outline;
    expect(stick!.vertices.map(({ x }) => x)).toEqual([0, 1200, 1200, 0]);
    expect(marks.map(({ vertices }) => vertices[0]!.x)).toEqual([150, 450, 750, 1050]);
  });

  test('of the rescue board has edge A on the feet and edge B half a foot between', () => {
    const rows = poleTable(planOfSample('tarn-rescue')).rows;
    const cells = rows.flatMap((row) => (row.kind === 'row' ? [row.cells] : []));
    const at = (mark: string) => {
      const cell = cells.find(([name]) => name === mark)![1] as { value: number; text: string };
      return [Math.round(cell.value * 10) / 10, cell.text];
    };
    // Pitch and datum 12 in, stagger 50 %: A5 at 60 in, B5 at 54 in, since B1 stands at 6 in.
    expect(at('A5')).toEqual([1524, '60 in']);
    expect(at('B5')).toEqual([1371.6, '54 in']);
  });

  test("has tape positions whose two ends add up to the board's length", () => {
    const plan = planOfSample('mere-prone');
    for (const row of poleTable(plan).rows) {
      if (row.kind === 'heading') continue;
      const [, nose, tail] = row.cells as [unknown, { value: number; text: string }, { value: number; text: string }];
      expect(nose.value + tail.value).toBeCloseTo(plan.board.length, 2);
      const read = parseLength(nose.text, 'mm') as { value: number };
      expect(Math.abs(read.value - nose.value)).toBeLessThanOrEqual(0.05 + 1e-9);
    }
  });
});
