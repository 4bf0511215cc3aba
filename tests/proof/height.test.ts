import { easeCorners } from '../../src/contour/ease.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastHeight as leastBetween, type Edges } from '../../src/chamber/edges.js';
import { readJob } from '../../src/job/whole/read.js';
import { planOf } from '../../src/plan.js';
import { leastHeight } from '../../src/proof/height.js';
import { tooSmall } from '../../src/proof/pockets.js';
import { routedChambers } from '../../src/proof/published.js';
import { jobFiles } from '../random/jobFile.js';
import { evenly } from '../evenly.js';

type Pair = readonly [number, number];

const SEED = 20261126;
const RADIUS = 6;

const eased = (corners: readonly Pair[]) => easeCorners(corners, RADIUS)!.contour;
const heightOf = (corners: readonly Pair[]) => leastHeight(eased(corners));

describe('the height of a pocket is upright, where that is least, before its corners are eased', () => {
  test('of a rectangle it is its height', () => {
    const corners: Pair[] = [
      [100, 10],
      [300, 10],
      [300, 50],
      [100, 50],
    ];
    expect(heightOf(corners)).toBeCloseTo(40, 9);
  });

  test('of one that rises along the rocker it is not what it rises', () => {
    const corners: Pair[] = [
      [100, 10],
      [300, 60],
      [300, 100],
      [100, 50],
    ];
    expect(heightOf(corners)).toBeCloseTo(40, 9);
  });

  // By hand: a height of h square to a length turned by a is h / cos a upright, and the ends lie within the corners.
  test('of a turned guide it is a little more than the guide is high, wherever its ends stand', () => {
    for (const degrees of [-20, -3, 3, 20]) {
      const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const corners = [
        [0, 0],
        [200, 0],
        [200, 40],
        [0, 40],
      ].map(([x, y]): Pair => [400 + x! * c - y! * s, 30 + x! * s + y! * c]);
      expect(heightOf(corners)).toBeCloseTo(40 / c, 9);
    }
  });

  test('it is found where an edge bends inward, and not taken at the ends alone', () => {
    const corners: Pair[] = [
      [100, 10],
      [200, 30],
      [300, 10],
      [300, 60],
      [200, 55],
      [100, 60],
    ];
    expect(heightOf(corners)).toBeCloseTo(25, 9);
  });
});

/** Long edges from end to end at even steps, as chambers are drawn, less steep than the sides that end them: mm. */
const drawnEdges = fc
  .tuple(
    fc.array(fc.tuple(evenly(0, 15), evenly(30, 48)), {
      minLength: 2,
      maxLength: 7,
    }),
    evenly(-0.3, 0.3),
  )
  .map(([heights, slope]): Edges => {
    const at = (i: number) => 300 + 50 * i;
    return {
      bottom: heights.map(([low], i): Pair => [at(i), low + slope * 50 * i]),
      top: heights.map(([low, high], i): Pair => [at(i), low + high + slope * 50 * i]),
    };
  });

// The one definition, measured three ways: from the edges that the planner drew, by the proof from the contour that was
// published, and by upright lines half a millimetre apart (brute force).
test(`planner and proof measure the same height of a chamber, and upright lines find none lower (seed ${SEED})`, () => {
  fc.assert(
    fc.property(drawnEdges, (edges) => {
      const made = easeCorners([...edges.bottom, ...[...edges.top].reverse()], RADIUS);
      fc.pre(made !== undefined);
      const height = leastHeight(made!.contour);
      expect(height).toBeCloseTo(leastBetween(edges), 6);
      const on = (edge: readonly Pair[], s: number) => {
        const i = Math.min(edge.length - 2, Math.floor((s - 300) / 50));
        const share = (s - 300 - 50 * i) / 50;
        return edge[i]![1] * (1 - share) + edge[i + 1]![1] * share;
      };
      const last = edges.bottom[edges.bottom.length - 1]![0];
      let least = Infinity;
      for (let s = 300; s <= last; s += 0.5) least = Math.min(least, on(edges.top, s) - on(edges.bottom, s));
      expect(height).toBeCloseTo(least, 6);
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test(
  `no chamber of a random board is lower than the smallest, with guides of its own or shared (seed ${SEED})`,
  { timeout: 600_000 },
  () => {
    let lowest = Infinity;
    fc.assert(
      fc.property(jobFiles, fc.integer({ min: 12, max: 45 }), (file, height) => {
        const { job } = readJob(JSON.stringify(file), 'random.json', () => undefined);
        fc.pre(job !== undefined);
        const chambers = { ...job!.chambers, smallest: { ...job!.chambers.smallest, height } };
        for (const guides of [undefined, { kind: 'count', count: 5 } as const]) {
          const plan = planOf({ ...job!, chambers, routing: { ...job!.routing, ...(guides && { guides }) } });
          const routed = routedChambers(plan);
          expect(tooSmall(routed, plan)).toEqual([]);
          for (const { chamber } of routed) lowest = Math.min(lowest, leastHeight(chamber.contour) / height);
        }
      }),
      { seed: SEED, numRuns: 20, maxSkipsPerRun: 20 },
    );
    // Some come so near that a rule a little different would have been broken.
    expect(lowest).toBeLessThan(1.01);
  },
);
