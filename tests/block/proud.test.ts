import { describe, expect, test } from 'vitest';
import { kernel, solidOfChamber } from '../oracle/kernel.js';
import { planOf } from '../../src/plan.js';
import type { Chamber } from '../../src/chamber/chamber.js';
import { toBoard, toFace } from '../../src/layup/frame.js';
import type { Face } from '../../src/layup/layup.js';
import { flared } from '../weigh/flared.js';
import { sampleJob } from '../samples.js';
import { makingTable } from '../../src/sheet/cutting/cutTables.js';
import { cuttingOf } from '../../src/block/cut/cutting.js';

describe('blocks of chambers that go right through a flared piece', () => {
  const plan = planOf(flared());
  const through = plan.blocks.filter(({ proud }) => proud);
  const isThrough = ({ row, profile, depth }: Chamber, far: Face) =>
    profile.every(([s]) => toFace(far, ...plane(toBoard(rowOf(row).face, s, 0, depth[1])))[1] < 1e-6);
  const plane = ([x, y]: readonly [number, number, number]): [number, number] => [x, y];
  const rowOf = (id: string) => plan.layup.rows.find((row) => row.id === id)!;

  test('stand proud of the far face by what a straight line through both joints says', () => {
    expect(through.length).toBeGreaterThan(10);
    for (const { id, row, proud } of through) {
      const { face, through: far } = rowOf(row);
      const chamber = plan.chambers.find((each) => each.id === id)!;
      const s = chamber.profile.map(([each]) => each);
      // The far face as a line in the near one's frame, from two of its points.
      const at = (x: number) => toFace(face, far!.origin[0] + x * far!.along[0], far!.origin[1] + x * far!.along[1]);
      const [[s0, t0], [s1, t1]] = [at(0), at(1000)];
      const deep = (place: number) => t0 + ((place - s0) / (s1 - s0)) * (t1 - t0);
      expect(proud!.nose).toBeCloseTo(Math.max(0, chamber.depth[1] - deep(Math.min(...s))), 6);
      expect(proud!.tail).toBeCloseTo(Math.max(0, chamber.depth[1] - deep(Math.max(...s))), 6);
      expect(Math.max(proud!.nose, proud!.tail)).toBeLessThan(10);
    }
  });

  // manifold-3d holds the prism that is cut and, parted by the far face, what is left of it.
  test('weigh as they are cut, and in the board as they are once planed (manifold-3d)', async () => {
    const k = await kernel();
    for (const { id, row, made, volume, proud } of through) {
      const { face, through: far } = rowOf(row);
      const chamber = plan.chambers.find((each) => each.id === id)!;
      const prism = solidOfChamber(k, face, chamber.profile, chamber.depth);
      // The profile holds the arcs of the contour inside: it is larger by a few square millimetres.
      expect(made.volume / (prism.volume() / 1e6)).toBeCloseTo(1, 2);
      expect(made.weight).toBeCloseTo((made.volume / 1000) * plan.job.fill.density, 9);
      const [nx, ny] = far!.inward;
      const left = prism.trimByPlane([nx, ny, 0], nx * far!.origin[0] + ny * far!.origin[1]);
      // A chamber that leaves a floor at its thicker end is for its row to forbid: what it takes out is told at its
      // middle.
      if (isThrough(chamber, far!)) expect(volume / made.volume, id).toBeCloseTo(left.volume() / prism.volume(), 4);
      expect(Math.max(proud!.nose, proud!.tail)).toBeGreaterThan(0.05);
    }
    const cut = through.reduce((sum, { made }) => sum + made.volume, 0);
    const left = through.reduce((sum, { volume }) => sum + volume, 0);
    expect(cut / left).toBeGreaterThan(1.01);
  });

  test('say so, at each end that stands out, where it is told how they are made', () => {
    const { rows } = makingTable(plan, cuttingOf(plan));
    for (const { id, proud } of through) {
      const cells = rows.flatMap((each) => (each.kind === 'row' && each.cells[0] === id ? each.cells : []));
      const said = [...String(cells.at(-1)).matchAll(/(nose|tail) ([\d.]+) mm/g)];
      const stands = Object.entries(proud!).filter(([, mm]) => mm > 0.1);
      expect(
        said.map(([, end]) => end),
        id,
      ).toEqual(stands.map(([end]) => end));
      // To a tenth of a millimetre, as a rule or a caliper reads.
      for (const [i, [, mm]] of stands.entries())
        expect(Math.abs(Number(said[i]![2]) - mm), id).toBeLessThanOrEqual(0.1);
    }
  });
});

test('no block stands proud where faces are parallel', () => {
  expect(planOf(sampleJob('tarn-rescue')).blocks.filter(({ proud }) => proud)).toEqual([]);
});
