import { describe, expect, test } from 'vitest';
import { settled } from '../../src/print/trace/settle.js';
import type { PathShape, TextShape } from '../../src/sheet/drawing.js';
import { faceSheet } from '../../src/sheet/face/faceSheet.js';
import { sheetRows } from '../../src/sheet/mirror.js';
import { planOfSample } from './sample.js';
import { smallPlan } from './smallPlan.js';

const plan = smallPlan();
const [left, right] = plan.layup.rows;

describe('faces that mirror each other', () => {
  test('share one sheet, which says so and numbers both rows', () => {
    const rows = sheetRows(plan);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ row: { id: 'R1' }, mirror: { id: 'L1' } });
    const sheet = faceSheet(plan, rows[0]!);
    expect(sheet.title).toBe('Face sheet, rows R1 and L1');
    expect(sheet.notes).toContain('for row L1 turn the sheet over and prick through; its numbers stand second');
    const words = settled(sheet).shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    for (const { id } of plan.chambers) expect(words.some((each) => each.includes(id))).toBe(true);
  });

  test('turned over, the one sheet is the other', () => {
    const paths = (row: typeof left) =>
      faceSheet(plan, { row: row! }).shapes.filter((s): s is PathShape => s.kind === 'path' && s.layer === 'chamber');
    const middle = plan.board.length / 2;
    paths(right).forEach((path, i) => {
      const other = paths(left)[i]!;
      for (const { x, y } of path.vertices) {
        const twin = other.vertices.find((v) => Math.hypot(v.x - (2 * middle - x), v.y - y) < 1e-9);
        expect(twin).toBeDefined();
      }
      // Both run counter-clockwise, so an arc that was on the left is the same arc on the right.
      expect(other.vertices.filter(({ bulge }) => (bulge ?? 0) > 0)).toHaveLength(4);
    });
  });

  test('have the nose on opposite sides of the sheet', () => {
    const noseOf = (row: typeof left) => {
      const sheet = faceSheet(plan, { row: row! });
      return (settled(sheet).shapes.find((s) => s.kind === 'text' && s.text === 'NOSE' && s.height === 7) as TextShape)
        .x;
    };
    expect(noseOf(right)).toBeLessThan(0);
    expect(noseOf(left)).toBeGreaterThan(plan.board.length);
  });

  test('get a sheet each as soon as one chamber or dot differs by more than a pencil line', () => {
    const [first, ...rest] = plan.chambers;
    const moved = { ...first!, contour: first!.contour.map((v) => ({ ...v, x: v.x + 0.2 })) };
    expect(sheetRows({ ...plan, chambers: [moved, ...rest] })).toHaveLength(2);
    const [dot, ...dots] = plan.glue.dots;
    const glue = { ...plan.glue, dots: [{ ...dot!, s: dot!.s + 1 }, ...dots] };
    expect(sheetRows({ ...plan, glue })).toHaveLength(2);
    const deeper = { ...first!, depth: [0, 50.2] as const };
    expect(sheetRows({ ...plan, chambers: [deeper, ...rest] })).toHaveLength(2);
  });

  test('do not exist where rows left and right are shifted against each other', () => {
    const shifted = planOfSample('fell-short');
    expect(sheetRows(shifted).every(({ mirror }) => mirror === undefined)).toBe(true);
  });
});
