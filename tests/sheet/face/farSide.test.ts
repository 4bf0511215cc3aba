import { describe, expect, test } from 'vitest';
import type { PathShape } from '../../../src/sheet/drawing.js';
import { depthWords } from '../../../src/sheet/face/depthWords.js';
import { faceSheet } from '../../../src/sheet/face/faceSheet.js';
import { seenFromFar } from '../../../src/sheet/face/farSide.js';
import { chambersOf, sheetRows } from '../../../src/sheet/mirror.js';
import { routingOf } from '../../../src/sheet/face/routingOf.js';
import { planOfSample } from '../sample.js';

describe('a row routed from both faces', () => {
  const plan = planOfSample('tarn-rescue');
  const near = sheetRows(plan).find(({ row }) => row.id === 'C1')!;
  const far = seenFromFar(plan, near)!;
  const both = chambersOf(plan, near.row).filter((chamber) => routingOf(plan, chamber).from.length > 1);
  const outlines = (shapes: ReturnType<typeof faceSheet>['shapes']) =>
    shapes.filter((shape): shape is PathShape => shape.kind === 'path' && shape.layer === 'chamber');

  test('has a second sheet with the chambers that go right through, and no other row has one', () => {
    expect(both.length).toBeGreaterThan(5);
    expect(chambersOf(far.plan, far.row.row).map(({ id }) => id)).toEqual(both.map(({ id }) => id));
    for (const each of sheetRows(plan)) if (each.row.id !== 'C1') expect(seenFromFar(plan, each)).toBeUndefined();
  });

  test('turned over, the second sheet lies on the first: halves meet', () => {
    const ids = new Set(both.map(({ id }) => id));
    const onlyBoth = { ...plan, chambers: plan.chambers.filter(({ row, id }) => row !== 'C1' || ids.has(id)) };
    const first = outlines(faceSheet(onlyBoth, near).shapes);
    const second = outlines(faceSheet(far.plan, far.row).shapes);
    expect(second).toHaveLength(first.length);
    first.forEach((path, i) => {
      for (const { x, y } of path.vertices) {
        const twin = second[i]!.vertices.find((v) => Math.hypot(v.x - (plan.board.length - x), v.y - y) < 1e-6);
        expect(twin).toBeDefined();
      }
    });
  });

  test('says on both sheets how deep a half is, never less than makes them meet', () => {
    for (const chamber of both) {
      const words = depthWords(chamber, near.row, plan);
      expect(words).toMatch(/^half way, /);
      expect(
        depthWords(
          chambersOf(far.plan, far.row.row).find(({ id }) => id === chamber.id)!,
          far.row.row,
          plan,
        ),
      ).toBe(words);
      const [, whole = '0', above = '0', below = '1'] = /(\d+)?(?: ?(\d+)\/(\d+))? in/.exec(words)!;
      const inches = Number(whole) + Number(above) / Number(below);
      expect(2 * 25.4 * inches).toBeGreaterThanOrEqual(chamber.depth[1]);
    }
  });
});
