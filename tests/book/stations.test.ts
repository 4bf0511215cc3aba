import { describe, expect, test } from 'vitest';
import { stationsOf } from '../../src/book/stations.js';
import { planOf } from '../../src/plan.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { sampleJob } from '../samples.js';

const k = await kernel();

describe('what is measured at the stations', () => {
  test.each(['tarn-rescue', 'fell-short'] as const)(
    'is as thick and as wide as a slice of %s in manifold-3d',
    (board) => {
      const plan = planOf(sampleJob(board));
      const solid = solidOfMesh(k, plan.board.mesh);
      const stations = stationsOf(plan);
      expect(stations.length).toBeGreaterThan(4);
      for (const { x, thickness, side, right, left, width } of stations) {
        // Turned so that the length stands up: x of the slice is −z of the board.
        const section = solid.rotate([0, -90, 0]).slice(x);
        const { min, max } = section.bounds();
        expect(width).toBeCloseTo(max[1] - min[1], 1);
        const thickAt = (y: number) => {
          const strip = section.intersect(k.CrossSection.square([4000, 0.01], true).translate([0, y])).bounds();
          return strip.max[0] - strip.min[0];
        };
        expect(thickness).toBeCloseTo(thickAt(0), 1);
        expect(right).toBeCloseTo(thickAt(side), 1);
        expect(left).toBeCloseTo(thickAt(-side), 1);
        expect(side).toBeGreaterThan(0);
        expect(side).toBeLessThanOrEqual(width / 4 + 1e-9);
      }
    },
  );

  test('is meant as drawn, also once something was measured', () => {
    const job = sampleJob('tarn-rescue');
    const shaped = { kind: 'thickness', x: 1200, y: 0, value: 95, off: 'both' } as const;
    expect(stationsOf(planOf({ ...job, shaped: [shaped] }))).toEqual(stationsOf(planOf(job)));
  });
});
