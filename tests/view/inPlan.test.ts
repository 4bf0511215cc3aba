import { beforeAll, describe, expect, test } from 'vitest';
import type { CrossSection, ManifoldToplevel } from 'manifold-3d';
import type { Point } from '../../src/contour/point.js';
import { chambersInPlan } from '../../src/view/chamberInPlan.js';
import { dotsInPlan } from '../../src/view/dotsInPlan.js';
import { jointsInPlan } from '../../src/view/jointsInPlan.js';
import { leftSolidInPlan } from '../../src/view/leftSolid.js';
import { outlineInPlan, sideOf } from '../../src/view/outlineInPlan.js';
import { kernel, solidOfChamber, solidOfMesh } from '../oracle/kernel.js';
import { planOfSample, SAMPLES } from '../sheet/sample.js';
import { smallPlan } from '../sheet/smallPlan.js';
import { areaWithin, bandAlong } from './kernelOutline.js';

/** Single precision of the kernel over boards of 4 m: as a share of an area, and of a place, mm. */
const KERNEL_AREA = 1e-4;
const KERNEL_PLACE = 0.01;

let wasm: ManifoldToplevel;
beforeAll(async () => {
  wasm = await kernel();
});

/** Least and greatest `x` and `y`. */
function boundsOf(points: readonly Point[]): number[] {
  const [xs, ys] = [0, 1].map((axis) => points.map((point) => point[axis as 0 | 1]));
  return [Math.min(...xs!), Math.max(...xs!), Math.min(...ys!), Math.max(...ys!)];
}

function isNear(points: readonly Point[], figure: CrossSection): void {
  const { min, max } = figure.bounds();
  const there = [min[0], max[0], min[1], max[1]];
  boundsOf(points).forEach((each, i) => expect(Math.abs(each - there[i]!)).toBeLessThan(KERNEL_PLACE));
}

describe.each(SAMPLES)('seen from above, %s', (name) => {
  const silhouette = () => {
    const plan = planOfSample(name);
    return { plan, figure: solidOfMesh(wasm, plan.board.mesh).project() };
  };

  test('has the outline of its shadow by manifold-3d', () => {
    const { plan, figure } = silhouette();
    const outline = outlineInPlan(plan.board, { from: 0, to: plan.board.length });
    const around = [...sideOf(outline, 'left').reverse(), ...sideOf(outline, 'right')].reverse();
    isNear(around, figure);
    expect(Math.abs(Math.abs(areaWithin(around)) - figure.area())).toBeLessThan(KERNEL_AREA * figure.area());
  });

  test('has joints that end where a narrow band along them leaves that shadow', () => {
    const { plan, figure } = silhouette();
    const outline = outlineInPlan(plan.board, { from: 0, to: plan.board.length });
    const joints = jointsInPlan(outline, plan.layup.joints);
    expect(joints).toHaveLength(plan.layup.joints.length);
    for (const { joint, from, to } of joints) {
      const { min, max } = figure.intersect(bandAlong(wasm, joint.at, joint.slope, 0.002)).bounds();
      expect(Math.abs(from[0] - min[0])).toBeLessThan(KERNEL_PLACE);
      expect(Math.abs(to[0] - max[0])).toBeLessThan(KERNEL_PLACE);
      for (const [x, y] of [from, to]) expect(y).toBeCloseTo(joint.at + joint.slope * x, 9);
    }
  });

  test('has chambers as their solids throw their shadows', () => {
    const { layup, chambers } = planOfSample(name);
    const faces = new Map(layup.rows.map(({ id, face }) => [id, face]));
    const seen = chambersInPlan(layup.rows, chambers);
    expect(seen.map(({ chamber }) => chamber.id)).toEqual(chambers.map(({ id }) => id));
    for (const { chamber, corners, middle, along, across } of seen) {
      const solid = solidOfChamber(wasm, faces.get(chamber.row)!, chamber.profile, chamber.depth);
      const figure = solid.project();
      isNear(corners, figure);
      expect(Math.abs(Math.abs(areaWithin(corners)) - figure.area())).toBeLessThan(KERNEL_AREA * figure.area());
      // A box about its middle as large as its room lies within it.
      const box = wasm.CrossSection.square([0.99 * along, 0.99 * across], true).translate([...middle]);
      if (faces.get(chamber.row)!.inward[0] === 0) expect(box.subtract(figure).area()).toBeLessThan(1e-3);
      solid.delete();
    }
  });

  test('has its dots on their joints', () => {
    const { glue, layup } = planOfSample(name);
    const seen = dotsInPlan(glue.dots, layup.joints);
    expect(seen.length).toBe(glue.dots.length);
    for (const { dot, x, y } of seen) {
      const joint = layup.joints.find(({ id }) => id === dot.joint)!;
      // On the joint's line, and as far along it as its place on the face says: s is measured along the joint.
      expect(y - joint.at - joint.slope * x).toBeCloseTo(0, 9);
      expect(Math.hypot(x, y - joint.at)).toBeCloseTo(dot.s, 6);
    }
  });
});

describe('a joint in plan', () => {
  const { board, layup } = smallPlan();
  const whole = outlineInPlan(board, { from: 0, to: board.length });
  const joint = layup.joints[1]!;

  test('that is flared ends where its line meets the outline, worked out by hand', () => {
    // From 40 mm out at the nose it runs out by 1 in 10. Between the rows at 900 mm (150 mm wide) and 1100 (82.5 mm)
    // the outline is straight:
    // 40 + 0.1 · x = 150 − 0.3375 · (x − 900) at x = 413.75 / 0.4375.
    const [seen] = jointsInPlan(whole, [{ ...joint, at: 40, slope: 0.1 }]);
    const x = 413.75 / 0.4375;
    expect(seen!.from).toEqual([0, 40]);
    expect(seen!.to).toEqual([expect.closeTo(x, 9), expect.closeTo(40 + 0.1 * x, 9)]);
  });

  test('is broken where something takes its place, not where it only touches', () => {
    const box = (low: number, high: number): Point[] => [
      [300, low],
      [500, low],
      [500, high],
      [300, high],
    ];
    const parts = (...taken: Point[][]) => jointsInPlan(whole, [joint], taken).map(({ from, to }) => [from[0], to[0]]);
    expect(parts()).toEqual([[0, 1200]]);
    expect(parts(box(20, 60))).toEqual([
      [0, 300],
      [500, 1200],
    ]);
    expect(parts(box(40, 90))).toEqual([[0, 1200]]);
  });

  test('beside the board is none', () => {
    expect(jointsInPlan(whole, [{ ...joint, at: 151 }])).toEqual([]);
  });
});

test('a place left solid is marked at its centre, half the least depth behind the face', () => {
  const plan = smallPlan();
  const job = {
    ...plan.job,
    board: { ...plan.job.board, length: 1200 },
    chambers: { ...plan.job.chambers, smallest: { depth: 20 } },
  } as typeof plan.job;
  const notes = [
    { kind: 'solid', where: 'R1-02', row: 'R1', place: 2, why: 'wall', by: [] },
    { kind: 'trimmed', where: 'R1-03', row: 'R1', place: 3, why: 'wall', by: [] },
  ] as unknown as typeof plan.notes;
  // Centres stand at 150 + 300 · k: the second at 450. The face lies 40 mm out, and 10 mm behind it is half of 20.
  expect(leftSolidInPlan({ layup: plan.layup, job, notes })).toEqual([{ where: 'R1-02', at: [450, 50] }]);
});
