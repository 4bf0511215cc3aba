import { describe, expect, test } from 'vitest';
import { settled } from '../../../src/print/trace/settle.js';
import { heightsAt } from '../../../src/chamber/heights.js';
import { jointFaces } from '../../../src/dot/jointFace.js';
import { toBoard } from '../../../src/layup/frame.js';
import { parseLength } from '../../../src/length/length.js';
import { planOf } from '../../../src/plan.js';
import { dotsSheet, sheetJoints } from '../../../src/sheet/dots/dotsSheet.js';
import { dotsTable } from '../../../src/sheet/dots/dotsTable.js';
import { sampleJob, SAMPLES } from '../../samples.js';

const boxed = (thickness: number) => {
  const job = sampleJob('mere-prone');
  return planOf({ ...job, dots: { ...job.dots, blank: { ...job.dots.blank, below: 5, thickness } } });
};

describe.each(SAMPLES)('the dots of %s', (name) => {
  const plan = planOf(sampleJob(name));
  const { units } = plan.job;
  const mm = (text: string) => {
    const read = parseLength(text, units);
    if (!read.ok) throw new Error(text);
    return read.value;
  };
  /** Half of the coarsest step that a length is written in, and what the grid and its mesh may differ by. */
  const step = units === 'mm' ? 0.05 : 25.4 / 32;
  const near = step + 0.06;

  test('are measured from the finished bottom line and the finished deck line right there, on sheet and list alike', () => {
    const rows = dotsTable(plan).rows.flatMap((row) => (row.kind === 'row' ? [row.cells] : []));
    let told = 0;
    for (const at of sheetJoints(plan)) {
      const { face } = jointFaces(plan.layup).find(({ joint }) => joint.id === at.joint.id)!;
      const texts = settled(dotsSheet(plan, at)).shapes.flatMap((s) => (s.kind === 'text' ? [s] : []));
      for (const dot of plan.glue.dots.filter(({ joint }) => joint === at.joint.id)) {
        const [x, y] = toBoard(face, dot.s, 0, 0);
        const line = heightsAt(plan.board.grid, x, y)!;
        const named = texts.findIndex(({ text }) => text === dot.id);
        const its = texts.slice(named + 1, named + 3);
        const found = its.map(({ text }) => /^(.+) over bottom, (.+) under deck$/.exec(text)).find((each) => each)!;
        expect(Math.abs(mm(found[1]!) - (dot.z - line.bottom)), dot.id).toBeLessThan(near);
        expect(Math.abs(mm(found[2]!) - (line.deck - dot.z)), dot.id).toBeLessThan(near);
        const cells = rows.find(([id]) => String(id).split(' ')[0] === dot.id)!;
        expect([cells[2], cells[3]].map((cell) => (cell as { text: string }).text)).toEqual([found[1], found[2]]);
        told++;
      }
    }
    expect(told).toBeGreaterThan(5);
  });

  test('lie on strips sawn to the rocker: no box is drawn that is not there', () => {
    for (const at of sheetJoints(plan)) {
      const { shapes } = settled(dotsSheet(plan, at));
      expect(shapes.filter((s) => s.kind === 'path' && s.layer === 'joint' && s.vertices.length > 2)).toEqual([]);
      expect(shapes.filter((s) => s.kind === 'text' && /underside/.test(s.text))).toEqual([]);
    }
  });
});

test('in a box that the job gives they are told from its underside too, and the box is drawn', () => {
  const plan = boxed(190);
  const at = sheetJoints(plan)[0]!;
  const { shapes } = settled(dotsSheet(plan, at));
  const box = shapes.filter((s) => s.kind === 'path' && s.layer === 'joint' && s.vertices.length === 4);
  expect(box).toHaveLength(1);
  const table = dotsTable(plan);
  const up = table.columns.findIndex(({ title }) => title === 'up from underside');
  const row = table.rows.find((each) => each.kind === 'row')!;
  const dot = plan.glue.dots.find(({ joint }) => joint === plan.glue.dots[0]!.joint)!;
  expect(row.kind === 'row' && (row.cells[up] as { value: number }).value).toBeCloseTo(dot.z + 5, 3);
});
