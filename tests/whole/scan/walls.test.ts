import { describe, expect, it } from 'vitest';
import { PATCHES } from '../../../src/board/mesh.js';
import { proofOf } from '../../../src/proof/proof.js';
import { after, shiftedBy, turnAbout } from '../../../src/scan/place/rigid.js';
import { verdictOf } from '../../../src/verdict/verdict.js';
import { kernel, solidOfChamber } from '../../oracle/kernel.js';
import { SKIN, skinsOf } from '../../oracle/patches.js';
import { ellipsoidBoard, holed, noisy, placed, randomFrom, rockerAt, stlBytes, VOLUME } from '../../scan/bodies.js';
import { planWith } from './scanned.js';

const solids = await kernel();
const board = ellipsoidBoard(solids, 256);
const put = after(shiftedBy(-300, 900, 40), after(turnAbout(0, 1.9), turnAbout(2, 0.7)));
const LOOK = 60;

/** The board as it was made, in the frame that the plan has laid it in. */
const truth = (plan: ReturnType<typeof planWith>) =>
  ({ ...placed(board, after(plan.job.board.scan!.setUp.place, put)) }) as Parameters<typeof skinsOf>[1];

describe.each([
  { noise: 0, bound: 0.1 },
  { noise: 0.3, bound: 0.9 },
  { noise: 1, bound: 3 },
])('a board scanned with $noise mm of noise', ({ noise, bound }) => {
  const plan = planWith(stlBytes(noisy(placed(board, put), noise, randomFrom(7))));

  it('is planned, proved and of the volume that it was made with', () => {
    expect(verdictOf(plan, proofOf(plan)).refusals).toEqual([]);
    expect(plan.chambers.length).toBeGreaterThan(25);
    expect(Math.abs(plan.board.volume / VOLUME - 1)).toBeLessThan(0.002);
  });

  it(`has every wall toward the true surface, by manifold-3d, to within ${bound} mm`, () => {
    const skins = skinsOf(solids, truth(plan));
    const faces = new Map(plan.layup.rows.map((row) => [row.id, row.face]));
    for (const { id, row, profile, depth } of plan.chambers) {
      const solid = solidOfChamber(solids, faces.get(row)!, profile, depth);
      for (const patch of PATCHES)
        expect(skins.gap(patch, solid, LOOK) + SKIN, `${id} ${patch}`).toBeGreaterThan(plan.asked[patch] - bound);
      solid.delete();
    }
    skins.free();
  });
});

describe('a scan with a hole', () => {
  const at = [100, 170, 35 + rockerAt(100)] as const;
  const plan = planWith(stlBytes(placed(holed(board, at, 45), put)));
  const skins = skinsOf(solids, truth(plan));

  it('says where it is, and that no chamber is planned there', () => {
    expect(plan.doubts.map(({ what }) => what)).toEqual([
      expect.stringMatching(
        /^scan hole 1: nothing was measured over 1[0-4]\d.*from the nose and 1\d\d.* (left|right) of the centreline/,
      ),
    ]);
    expect(plan.notes.some(({ by }) => by.includes('scan hole 1'))).toBe(true);
    expect(verdictOf(plan, proofOf(plan)).refusals).toEqual([]);
  });

  it('has every wall toward the true surface all the same, over the hole too', () => {
    const faces = new Map(plan.layup.rows.map((row) => [row.id, row.face]));
    for (const { id, row, profile, depth } of plan.chambers) {
      const solid = solidOfChamber(solids, faces.get(row)!, profile, depth);
      for (const patch of PATCHES)
        expect(skins.gap(patch, solid, LOOK) + SKIN, `${id} ${patch}`).toBeGreaterThan(plan.asked[patch] - 0.1);
      solid.delete();
    }
  });

  it('has no chamber within a wall of what was not measured', () => {
    const scan = plan.job.board.scan!;
    const rim = scan.holes[0]!.rim;
    const wall = Math.max(...PATCHES.map((patch) => plan.asked[patch]));
    const faces = new Map(plan.layup.rows.map((row) => [row.id, row.face]));
    for (const { id, row, profile, depth } of plan.chambers) {
      const { origin, along, inward } = faces.get(row)!;
      for (const [s] of profile)
        for (const t of depth) {
          const x = origin[0] + s * along[0] + t * inward[0];
          const y = origin[1] + s * along[1] + t * inward[1];
          const near = Math.min(...rim.map((point) => Math.hypot(point[0] - x, point[1] - y)));
          expect(near, id).toBeGreaterThan(wall);
        }
    }
  });
});
