import { layupOf } from '../../src/layup/layupOf.js';
import { describe, expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { bareOf } from '../../src/weigh/bare.js';
import { sumOf } from '../../src/weigh/moments.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { momentsOfSolid } from './solids.js';
import { flared } from './flared.js';
import { tarn } from './tarn.js';

/** Between the mesh's triangles sections are taken to change evenly, and the kernel has single precision. */
const CLOSE = 3e-4;
/** Where a member runs out at the rail between two rows of the grid, litres: a few tenths of a gram. */
const RUN_OUT = 4e-4;

const k = await kernel();

describe.each([
  ['straight', tarn()],
  ['flared', flared()],
])('a board with %s joints, against manifold-3d', (_, job) => {
  const board = boardOf(job.board);
  const layup = layupOf(job.glueUp, board.length);
  const bare = bareOf(board, layup);
  const solid = solidOfMesh(k, board.mesh);

  test('has in each member the volume, balance and inertia that the kernel cuts out of the mesh', () => {
    layup.members.forEach(({ side, left, right }, m) => {
      // The left is the mirror image of the right.
      if (side === 'L') return;
      let part = solid;
      // Keeps what lies to the right of the left joint and to the left of the right one.
      if (left) part = part.trimByPlane([-left.slope, 1, 0], left.at / Math.hypot(1, left.slope));
      if (right) part = part.trimByPlane([right.slope, -1, 0], -right.at / Math.hypot(1, right.slope));
      const true_ = momentsOfSolid(part);
      const ours = bare.members[m]!;
      const scale = true_.amount / 1e6;
      expect(Math.abs(ours.amount - scale)).toBeLessThan(CLOSE * scale + RUN_OUT);
      expect(Math.abs(ours.x / ours.amount - true_.x / true_.amount)).toBeLessThan(
        0.5 + (RUN_OUT * board.length) / 2 / scale,
      );
      expect(Math.abs(ours.xx - true_.xx / 1e6)).toBeLessThan(2 * CLOSE * ours.xx + RUN_OUT * board.length ** 2);
      expect(Math.abs(ours.yy - true_.yy / 1e6)).toBeLessThan(2 * CLOSE * ours.yy + 1);
    });
  });

  test('has in its members together the volume of its mesh', () => {
    expect(sumOf(bare.members).amount).toBeCloseTo(board.volume, 2);
  });

  test('has deck and bottom that together are the surface of the mesh', () => {
    const area = bare.skin.deck.amount + bare.skin.bottom.amount;
    expect(Math.abs(area / (solid.surfaceArea() / 1e6) - 1)).toBeLessThan(CLOSE);
  });

  test('has joints with the area of the section that the kernel cuts along them', () => {
    const areas = layup.joints.map(({ at, slope, kind }) => {
      const turned = solid.translate([0, -at, 0]).rotate([0, 0, (-Math.atan(slope) * 180) / Math.PI]);
      return { kind, area: turned.rotate([90, 0, 0]).slice(0).area() / 1e6 };
    });
    for (const kind of ['bonded', 'dotted'] as const) {
      const area = areas.filter((each) => each.kind === kind).reduce((sum, each) => sum + each.area, 0);
      expect(Math.abs(bare[`${kind}Joints`].amount - area)).toBeLessThan(1e-3 * area + 1e-6);
    }
  });
});

test('a blank holds the board and is larger by what is sawn away', () => {
  const job = tarn();
  const board = boardOf(job.board);
  const layup = layupOf(job.glueUp, board.length);
  const { blank, members } = bareOf(board, layup);
  blank.members.forEach((moments, m) => expect(moments.amount).toBeGreaterThan(members[m]!.amount));
  // Strips sawn to rocker and thickness: far less than the box around the board.
  expect(sumOf(blank.members).amount).toBeLessThan((board.length * board.width * board.thickness) / 1e6);
});
