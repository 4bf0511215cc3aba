import { spanAt } from '../../../src/contour/span.js';
import { sharpCorners } from '../../../src/contour/sharp.js';
import { areaOf } from '../../../src/contour/area.js';
import { describe, expect, test } from 'vitest';
import { settled } from '../../../src/print/trace/settle.js';
import { parseLength } from '../../../src/length/length.js';
import type { Units } from '../../../src/length/units.js';
import { planOf } from '../../../src/plan.js';
import { onBench } from '../../../src/sheet/face/faceOnBench.js';
import type { PathShape } from '../../../src/sheet/drawing.js';
import { faceSheet } from '../../../src/sheet/face/faceSheet.js';
import { faceLineAt } from '../../../src/view/faceLine.js';
import { guideSheets } from '../../../src/sheet/guides/guideSheet.js';
import { guideSettings } from '../../../src/sheet/guides/guideTables.js';
import { sheetRows } from '../../../src/sheet/mirror.js';
import { sampleJob } from '../../samples.js';

describe.each(['mm', 'in'] as const)('fell-short routed with four shared guides, told in %s', (units: Units) => {
  const job = { ...sampleJob('fell-short'), units };
  const own = planOf(job);
  const plan = planOf({ ...job, routing: { ...job.routing, guides: { kind: 'count', count: 4 } } });
  const mm = (written: string) => {
    const read = parseLength(written, units);
    if (!read.ok) throw new Error(written);
    return read.value;
  };

  test('every web of a face sheet is hatched over its width and most of its height', () => {
    for (const each of sheetRows(plan)) {
      const webs = faceSheet(plan, each).shapes.filter((s): s is PathShape => s.kind === 'path' && s.layer === 'web');
      const chambers = plan.chambers.filter(({ row }) => row === each.row.id);
      for (const { vertices } of webs) {
        const ys = vertices.map(({ y }) => y).sort((a, b) => a - b);
        expect(ys[2]! - ys[1]!, each.row.id).toBeGreaterThan(2);
        expect(Math.abs(areaOf(vertices))).toBeGreaterThan(0.9 * job.chambers.web * (ys[2]! - ys[1]!));
      }
      expect(webs.length).toBeGreaterThan(chambers.length / 2);
    }
  });

  test('the face carries the ends of a cross through the middle of each guide, along and across, and its number', () => {
    const cuts = new Map(plan.routing.guides.map(({ id, cut }) => [id, cut]));
    for (const each of sheetRows(plan)) {
      const bench = onBench(each.row.face, plan.board.length);
      const { shapes } = settled(faceSheet(plan, each));
      const marks = shapes.filter((s): s is PathShape => s.kind === 'path' && s.layer === 'mark');
      for (const setting of plan.routing.settings.filter(({ chamber }) => chamber.startsWith(`${each.row.id}-`))) {
        const [x, y] = bench.point(setting.s, setting.z);
        const turn = (setting.tiltInDegrees * (bench.noseAt === 'left' ? 1 : -1) * Math.PI) / 180;
        // Off the middle along and across the guide.
        const off = (v: { x: number; y: number }) => [
          (v.x - x) * Math.cos(turn) + (v.y - y) * Math.sin(turn),
          (v.y - y) * Math.cos(turn) - (v.x - x) * Math.sin(turn),
        ];
        const { length, height } = cuts.get(setting.guide)!;
        const near = marks.filter(({ vertices }) =>
          vertices.every((v) => Math.abs(off(v)[0]!) < length / 2 + 6 && Math.abs(off(v)[1]!) < height / 2 + 6),
        );
        for (const [along, half] of [
          [0, length / 2],
          [1, height / 2],
        ] as const)
          for (const end of [1, -1])
            expect(
              near.filter(({ vertices }) => {
                const places = vertices.map((v) => end * off(v)[along]!);
                return (
                  vertices.every((v) => Math.abs(off(v)[1 - along]!) < 1e-6) &&
                  Math.max(...places) > half &&
                  Math.min(...places) < half &&
                  Math.min(...places) > 0
                );
              }).length,
              `${setting.chamber} ${along} ${end}`,
            ).toBe(1);
        expect(
          shapes.some((s) => s.kind === 'text' && s.text.includes(setting.guide) && Math.hypot(s.x - x, s.y - y) < 160),
        ).toBe(true);
      }
    }
  });

  test('set by the figures of the list and made to the figures of its sheet, a guide cuts within the chamber that was proved', () => {
    const sizes = new Map(
      guideSheets(plan).map(({ id, notes }) => {
        const [, length, height] = /opening (.+?) × (.+?), corners/.exec(notes[0]!)!;
        return [id.replace('guide-', ''), [mm(length!), mm(height!)] as const];
      }),
    );
    const lines = guideSettings(plan).rows.flatMap((row) => (row.kind === 'row' ? [row.cells] : []));
    let shared = 0;
    for (const [id, guide, along, up, turn] of lines) {
      if (along === '') continue;
      shared++;
      const text = (cell: unknown) => (cell as { text: string }).text;
      const chamber = own.chambers.find((each) => each.id === id)!;
      const { face } = own.layup.rows.find((row) => row.id === chamber.row)!;
      const s = mm(text(along));
      const z = mm(text(up)) + faceLineAt(own.board, face).heightsAt(s)!.bottom;
      const angle = (parseFloat(String(turn)) * Math.PI) / 180;
      const [length, height] = sizes.get(String(guide))!;
      const [l, h] = [length / 2 - plan.routing.offset, height / 2 - plan.routing.offset];
      const room = sharpCorners(chamber.contour);
      for (let i = 0; i <= 40; i++) {
        for (const [u, v] of [
          [l * (i / 20 - 1), h],
          [l * (i / 20 - 1), -h],
        ] as const) {
          const at = s + u * Math.cos(angle) - v * Math.sin(angle);
          const high = z + u * Math.sin(angle) + v * Math.cos(angle);
          const span = spanAt(room, at);
          // The bottom line is read off the mesh here, off the grid there: they differ by less than a mesh may hide.
          expect(span, `${String(id)} ${at}`).toBeDefined();
          expect(high, String(id)).toBeLessThan(span![1] + 0.05);
          expect(high, String(id)).toBeGreaterThan(span![0] - 0.05);
        }
      }
    }
    expect(shared).toBe(plan.routing.settings.length);
    expect(shared).toBeGreaterThan(40);
  });
});
