import { easeCorners } from '../../src/contour/ease.js';
import { spanAt } from '../../src/contour/span.js';
import type { Manifold as Solid, ManifoldToplevel } from 'manifold-3d';
import { describe, expect, test } from 'vitest';
import type { Chamber } from '../../src/chamber/chamber.js';
import type { ChamberSpec, KeepOutSpec } from '../../src/job/job.js';
import { planOf, type Plan } from '../../src/plan.js';
import { faultsOf } from '../../src/proof/faults.js';
import { tooSmall } from '../../src/proof/pockets.js';
import { squaredOut } from '../../src/proof/plane.js';
import { proofOf } from '../../src/proof/proof.js';
import { footprintOf, routedChambers, type Published } from '../../src/proof/published.js';
import { heightsOver, sortedMesh } from '../../src/proof/surface.js';
import { sayFinding } from '../../src/finding/say.js';
import type { Units } from '../../src/length/units.js';
import type { Fault } from '../../src/proof/fault.js';
import { faultFinding } from '../../src/verdict/fault.js';
import { verdictOf } from '../../src/verdict/verdict.js';
import { kernel, solidOfChamber, solidOfMesh } from '../oracle/kernel.js';
import { sampleJob } from '../samples.js';

const plan = planOf(sampleJob('tarn-rescue'));
/** The same plan under other rules for its chambers. */
const under = (rules: Partial<ChamberSpec>): Published => ({
  ...plan,
  job: { ...plan.job, chambers: { ...plan.job.chambers, ...rules } },
});
/** The same plan with one of its chambers changed. */
const withChamber = (id: string, change: (chamber: Chamber) => Chamber): Published => ({
  ...plan,
  chambers: plan.chambers.map((each) => (each.id === id ? change(each) : each)),
});
const kindsOf = (published: Published): Fault['kind'][] => [...new Set(faultsOf(published).map(({ kind }) => kind))];

describe('one rule broken is one kind of fault, with its place', () => {
  const rules = plan.job.chambers;
  const nose = Math.min(...routedChambers(plan).map((one) => Math.min(...footprintOf(one).map(([x]) => x))));
  const web = Math.min(...plan.webs.map(({ from, to }) => to - from));
  const blind = plan.chambers.find(({ row }) => plan.layup.rows.find(({ id }) => id === row)!.end === 'solid')!;

  test('a chamber a tenth of a millimetre within the solid nose', () => {
    expect(kindsOf(under({ solidNose: nose + 0.1 }))).toEqual(['solid-end']);
    expect(kindsOf(under({ solidNose: nose - 0.001 }))).toEqual([]);
  });

  test('a chamber a tenth of a millimetre within the solid tail', () => {
    const last = Math.max(...routedChambers(plan).map((one) => Math.max(...footprintOf(one).map(([x]) => x))));
    expect(kindsOf(under({ solidTail: plan.board.length - last + 0.1 }))).toEqual(['solid-end']);
    expect(kindsOf(under({ solidTail: plan.board.length - last - 0.001 }))).toEqual([]);
  });

  test('a web thinner than asked', () => {
    expect(kindsOf(under({ web: web + 0.1 }))).toEqual(['web']);
  });

  test('a chamber a tenth of a millimetre too deep before its solid member', () => {
    const deeper = withChamber(blind.id, (one) => ({ ...one, depth: [one.depth[0], one.depth[1] + 0.1] }));
    expect(faultsOf(deeper).filter(({ kind }) => kind === 'floor')).toMatchObject([{ where: blind.id }]);
  });

  test('a corner that no cutter comes into', () => {
    const square = withChamber(blind.id, (one) => ({
      ...one,
      contour: squaredOut(one.contour).map(([x, y]) => ({ x, y })),
    }));
    expect(faultsOf(square)).toMatchObject([{ kind: 'corner', where: blind.id }]);
  });

  test('a chamber under the smallest', () => {
    const { length, height, depth } = rules.smallest;
    const shortest = Math.min(...routedChambers(plan).map(({ from, to }) => to - from));
    expect(kindsOf(under({ smallest: { length: shortest + 0.1, height, depth } }))).toEqual(['small']);
    expect(length).toBeLessThan(shortest + 0.1);
    const shallowest = Math.min(...plan.chambers.map((one) => one.depth[1]));
    expect(faultsOf(under({ smallest: { length, height, depth: shallowest + 0.1 } }))[0]).toMatchObject({
      kind: 'small',
      by: 'depth',
    });
  });

  // A wedge that rises: from its lowest corner to its highest 70 mm, but nowhere from bottom to deck more than 40, and
  // 20 at its tail end.
  test('a chamber that is lower than the smallest at one end only, however far it rises', () => {
    const wedge = easeCorners(
      [
        [400, 20],
        [600, 70],
        [600, 90],
        [400, 60],
      ],
      rules.cutterDiameter / 2,
    )!;
    const [one] = plan.chambers;
    const heights = tooSmall(routedChambers({ ...plan, chambers: [{ ...one!, ...wedge }] }), {
      ...plan,
      job: { ...plan.job, chambers: { ...rules, smallest: { ...rules.smallest, height: 21 } } },
    });
    expect(heights).toMatchObject([{ kind: 'small', where: one!.id, by: 'height', needs: 21 }]);
    expect(heights[0]!.has).toBeCloseTo(20, 6);
  });

  test('a planned dot above its margin', () => {
    const [dot, ...others] = plan.glue.dots;
    const raised = { ...dot!, z: dot!.z + dot!.margin - plan.job.dots.margin + 1 };
    const faults = faultsOf({ ...plan, glue: { ...plan.glue, dots: [raised, ...others] } });
    expect(faults.filter(({ kind }) => kind === 'margin')).toMatchObject([{ where: dot!.id }]);
    expect(faults.find(({ kind }) => kind === 'margin')!.has).toBeLessThan(plan.job.dots.margin);
  });

  test('glue in a chamber, and a smear that slants past its upper corner', () => {
    const chamber = plan.chambers.find(({ row }) => row === 'R1')!;
    const joint = plan.layup.rows.find(({ id }) => id === 'R1')!.face.joint;
    const right = Math.max(...chamber.profile.map(([s]) => s));
    const top = Math.max(...chamber.profile.flatMap(([s, z]) => (s > right - 10 ? [z] : [])));
    const smear = (by: number) => ({
      id: 'smear',
      joint,
      from: [right - 20, top + 20 + by] as const,
      to: [right + 20, top - 20 + by] as const,
      width: 4,
      sides: [],
    });
    const faults = (by: number) => faultsOf({ ...plan, glue: { dots: [], smears: [smear(by)] } });
    expect(faults(0)).toContainEqual(expect.objectContaining({ kind: 'glue', where: chamber.id, by: 'smear' }));
    expect(faults(40).filter(({ where }) => where === chamber.id)).toEqual([]);
  });

  test('a block too thick, one too large, and one that is not there', () => {
    const [first, ...others] = plan.blocks;
    const made = first!.made;
    const withMade = (change: Partial<typeof made>) => ({
      ...plan,
      blocks: [{ ...first!, made: { ...made, ...change } }, ...others],
    });
    expect(faultsOf(withMade({ thickness: made.thickness + 0.1 }))).toMatchObject([
      { kind: 'block', where: first!.id, by: 'thickness' },
    ]);
    const middle = made.outline[0]!;
    const larger = made.outline.map((at) => ({
      ...at,
      x: middle.x + 1.01 * (at.x - middle.x),
      y: middle.y + 1.01 * (at.y - middle.y),
    }));
    expect(faultsOf(withMade({ outline: larger }))).toMatchObject([{ kind: 'block', where: first!.id, by: 'outline' }]);
    expect(faultsOf({ ...plan, blocks: others })).toMatchObject([{ kind: 'block', where: first!.id }]);
  });

  test('a keep-out on a joint', () => {
    const chamber = plan.chambers.find(({ row }) => row === 'R1')!;
    const { joint } = plan.layup.rows.find(({ id }) => id === 'R1')!.face;
    const [s, z] = chamber.profile[0]!;
    const points = [
      [s - 5, z - 5],
      [s + 25, z - 5],
      [s + 25, z + 25],
    ] as const;
    const jointKeepOuts = [{ name: 'strap', joint, points }];
    const faults = faultsOf({ ...plan, job: { ...plan.job, jointKeepOuts } });
    expect(faults).toContainEqual(expect.objectContaining({ kind: 'keep-out', where: chamber.id, by: 'strap' }));
  });
});

// A keep-out broader than its row and so long that the deck sinks between its ends: of its outline a chamber in the
// middle meets nothing, and yet stands in it. By hand from the heights of the deck.
test('a chamber that clears the outline of a keep-out is refused where it stands in what the outline encloses', () => {
  const short = planOf(sampleJob('fell-short'));
  const surface = sortedMesh(short.board.mesh);
  let held = 0;
  for (const one of routedChambers(short)) {
    // Straight across from face to depth in the middle of the chamber, joints being flared.
    const corners = footprintOf(one);
    const mean = (i: number, j: number, axis: 0 | 1) => (corners[i]![axis] + corners[j]![axis]) / 2;
    const [near, far] = [mean(0, 1, 1), mean(2, 3, 1)];
    const [x, y] = [(mean(0, 1, 0) + mean(2, 3, 0)) / 2, (near + far) / 2];
    const length = one.to - one.from + 700;
    const across = [0.1, 0.5, 0.9].map((share) =>
      [x - length / 2, x, x + length / 2].map((at) => heightsOver(surface, at, near + share * (far - near))?.high),
    );
    if (across.flat().includes(undefined)) continue;
    // Lowest of the deck over the ends, and over the chamber's middle.
    const ends = Math.min(...across.flatMap(([before, , after]) => [before!, after!]));
    const middle = Math.min(...across.map(([, at]) => at!));
    const top = Math.max(...one.chamber.profile.map(([, z]) => z));
    const over = spanAt(one.chamber.profile, (one.from + one.to) / 2)![1];
    const into = (ends - middle - (top - over)) / 2;
    if (into < 0.2) continue;
    held++;
    const width = 4 * Math.abs(far - near) + 200;
    const depth = { from: 'deck', deep: middle - over + into } as const;
    expect(ends - depth.deep).toBeGreaterThan(top);
    const keepOuts: KeepOutSpec[] = [{ name: 'plug', kind: 'rectangle', x, y, length, width, depth }];
    const faults = faultsOf({ ...short, job: { ...short.job, keepOuts, jointKeepOuts: [] } });
    expect(faults).toContainEqual(expect.objectContaining({ kind: 'keep-out', where: one.chamber.id, by: 'plug' }));
  }
  expect(held).toBeGreaterThan(0);
});

// manifold-3d, an independent kernel: the keep-out as a solid (its outline right through the board, less the board
// moved off by its depth), cut with the chamber's solid.
test('a keep-out of any outline and depth is entered exactly where the solids of keep-out and chamber meet', async () => {
  const k = await kernel();
  const board = solidOfMesh(k, plan.board.mesh);
  const surface = sortedMesh(plan.board.mesh);
  let entered = 0;
  let clear = 0;
  for (let i = 0; i < 60; i++) {
    const one = routedChambers(plan)[(i * 37) % plan.chambers.length]!;
    const corners = footprintOf(one);
    const at = (axis: 0 | 1) => corners.reduce((sum, corner) => sum + corner[axis] / 4, 0);
    const [x, y] = [at(0) + ((i % 5) - 2) * 20, at(1) + ((i % 3) - 1) * 8];
    const over = heightsOver(surface, x, y);
    if (!over) continue;
    const from = i % 2 ? 'deck' : 'bottom';
    const z = one.chamber.profile.map(([, each]) => each);
    const skin = from === 'deck' ? over.high - Math.max(...z) : Math.min(...z) - over.low;
    const depth = i % 4 === 3 ? undefined : ({ from, deep: Math.max(1, skin + ((i % 11) - 5) * 0.7) } as const);
    const shape = [
      { kind: 'disc', x, y, radius: 4 + (i % 7) * 6 },
      { kind: 'rectangle', x, y, length: 30, width: 12 + (i % 4) * 10 },
      {
        kind: 'polygon',
        points: [
          [x, y],
          [x + 50, y - 14],
          [x + 12, y],
          [x + 50, y + 14],
        ] as [number, number][],
      },
    ][i % 3]! as KeepOutSpec;
    const keepOut: KeepOutSpec = { ...shape, name: 'kept', ...(depth && { depth }) };
    const published: Published = { ...plan, job: { ...plan.job, keepOuts: [keepOut], jointKeepOuts: [] } };
    const found = new Set(faultsOf(published).flatMap(({ where, kind }) => (kind === 'keep-out' ? [where] : [])));
    const region = keptOf(k, board, keepOut);
    for (const each of routedChambers(plan)) {
      const solid = solidOfChamber(k, each.row.face, each.chamber.profile, each.chamber.depth);
      const shared = solid.intersect(region).volume();
      solid.delete();
      const area = (each.to - each.from) * each.chamber.depth[1];
      // What is a graze to the one may be a sliver to the other.
      if (found.has(each.chamber.id)) {
        expect(shared, each.chamber.id).toBeGreaterThan(0);
        entered++;
      } else {
        expect(shared, each.chamber.id).toBeLessThan(Math.max(0.02 * area, 5));
        clear++;
      }
    }
    region.delete();
  }
  board.delete();
  expect(entered).toBeGreaterThan(20);
  expect(clear).toBeGreaterThan(1000);
});

function keptOf({ CrossSection }: ManifoldToplevel, board: Solid, keepOut: KeepOutSpec): Solid {
  const { kind } = keepOut;
  const section =
    kind === 'disc'
      ? CrossSection.circle(keepOut.radius, 256).translate([keepOut.x, keepOut.y])
      : kind === 'polygon'
        ? new CrossSection([keepOut.points.map(([x, y]): [number, number] => [x, y])], 'NonZero')
        : CrossSection.square([keepOut.length, keepOut.width], true).translate([keepOut.x, keepOut.y]);
  const through = section.extrude(1200).translate([0, 0, -300]).intersect(board);
  if (!keepOut.depth) return through;
  const { from, deep } = keepOut.depth;
  return through.subtract(board.translate([0, 0, from === 'deck' ? -deep : deep]));
}

test('a plan with a fault does not stand, and the verdict names it', () => {
  const proof = proofOf(under({ web: plan.job.chambers.web + 3 }) as Plan);
  const { stands, refusals } = verdictOf(plan, proof);
  expect(stands).toBe(false);
  expect(refusals[0]).toMatchObject({
    where: expect.stringMatching(/^[LCR]\d?-\d+\w?$/),
    what: expect.stringMatching(/^only [\d.]+ in is left between it and .* the web asked is/),
    remedy: expect.stringMatching(/^a narrower web .*routed --undo/),
  });
  expect(verdictOf(plan, proofOf(plan)).stands).toBe(true);
});

test('what a fault says names chamber, rule and figures', () => {
  const web = { kind: 'web', where: 'R2-05', by: 'R2-04', has: 11.5, needs: 12.7 } as const;
  const said = (fault: Fault, units: Units) => sayFinding(faultFinding(fault, units));
  const cure =
    'a narrower web if that will do, or if its row is not routed yet, take it out with routed --undo and plan again';
  expect(said(web, 'mm')).toBe(
    `R2-05: only 11.50 mm is left between it and R2-04; the web asked is 12.70 mm → ${cure}`,
  );
  expect(said(web, 'in')).toBe(
    `R2-05: only 0.453 in is left between it and R2-04; the web asked is 0.500 in → ${cure}`,
  );
  expect(said({ kind: 'block', where: 'R2-05', has: 0, needs: 30 }, 'mm')).toMatch(/^R2-05: it has no block → cut no/);
});
