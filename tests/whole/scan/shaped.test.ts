import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PATCHES, type Mesh } from '../../../src/board/mesh.js';
import { shrinkingOf } from '../../../src/cli/shrinking.js';
import { readJob } from '../../../src/job/whole/read.js';
import { planOf, type Plan } from '../../../src/plan.js';
import { proofOf } from '../../../src/proof/proof.js';
import { after, shiftedBy, turnAbout } from '../../../src/scan/place/rigid.js';
import type { Triangles } from '../../../src/scan/triangles.js';
import { verdictOf } from '../../../src/verdict/verdict.js';
import { shapedBy } from '../../../src/view/shapedBy.js';
import { kernel, solidOfChamber } from '../../oracle/kernel.js';
import { SKIN, skinsOf } from '../../oracle/patches.js';
import { holed, placed, stlBytes } from '../../scan/bodies.js';

const solids = await kernel();
const text = readFileSync('samples/mere-prone.yaml', 'utf8');
const read = (bytes?: Uint8Array, more = '') =>
  readJob(
    text + more,
    'mere-prone.yaml',
    () => undefined,
    undefined,
    () => bytes,
  );
const drawn = planOf(read().job!);
const put = after(shiftedBy(700, -80, 1200), after(turnAbout(1, 0.4), turnAbout(2, -1.2)));
const SHAPED = '\nshaped: {mesh: shaped.stl, units: mm}\n';

function shapedPlan(mesh: Triangles): Plan {
  const { job, findings } = read(stlBytes(placed(mesh, put)), SHAPED);
  if (!job) throw new Error(JSON.stringify(findings));
  return planOf(job);
}

/** How far a plan's scan lies from where the drawing has it. */
function off({ board }: Plan, truth: Triangles): number {
  let most = 0;
  for (let i = 0; i < 2000; i++) {
    const k = 3 * Math.floor((i * truth.positions.length) / 6000);
    // The scan's points come in the order of the triangles that first used them: matched by the nearest.
    let near = Infinity;
    for (let at = 0; at < board.proved.positions.length && near > 1e-6; at += 3) {
      const dx = board.proved.positions[at]! - truth.positions[k]!;
      if (Math.abs(dx) > 2) continue;
      near = Math.min(
        near,
        Math.hypot(
          dx,
          board.proved.positions[at + 1]! - truth.positions[k + 1]!,
          board.proved.positions[at + 2]! - truth.positions[k + 2]!,
        ),
      );
    }
    if (i % 40 === 0) most = Math.max(most, near);
  }
  return most;
}

describe('a board shaped just as it was drawn, scanned askew', () => {
  const plan = shapedPlan(drawn.board.mesh);

  it('is laid over the drawing to a few hundredths of a millimetre', () => {
    expect(off(plan, drawn.board.mesh)).toBeLessThan(0.1);
  });

  it('differs nowhere from it, and no chamber must shrink by more than that', () => {
    for (const { x, ...by } of shapedBy(drawn.board, plan.board))
      for (const each of Object.values(by)) expect(Math.abs(each), `at ${x}`).toBeLessThan(0.25);
    expect(verdictOf(plan, proofOf(plan)).refusals).toEqual([]);
  });
});

describe('a deck planed 3 mm too low over half a metre', () => {
  const [from, to] = [1600, 2100];
  const low = (x: number) => (x > from && x < to ? 3 * Math.sin((Math.PI * (x - from)) / (to - from)) ** 2 : 0);
  const { positions, triangles } = drawn.board.mesh;
  const middle = (x: number) => drawn.board.surface.bottom(x) + drawn.board.surface.thickness(x) / 2;
  const shape = positions.map((value, i) => {
    const x = positions[i - 2]!;
    return i % 3 === 2 && value > middle(x) ? value - low(x) : value;
  });
  const mesh: Triangles = { positions: shape, triangles };
  const plan = shapedPlan(mesh);

  it('is found where it is, and nothing elsewhere', () => {
    for (const { x, deck, bottom, left, right } of shapedBy(drawn.board, plan.board)) {
      expect(Math.abs(deck + low(x)), `deck at ${x}`).toBeLessThan(0.3);
      for (const each of [bottom, left, right]) expect(Math.abs(each), `at ${x}`).toBeLessThan(0.3);
    }
  });

  it('the chambers under it are named, and the plan made anew stands', () => {
    const { must, summary, each } = shrinkingOf(plan)!;
    expect(must).toBe(true);
    expect(summary[0]).toMatch(/chambers as drawn must shrink/);
    expect(each.length).toBeGreaterThan(4);
    expect(verdictOf(plan, proofOf(plan)).refusals).toEqual([]);
  });

  it('every wall of it holds toward the board as it was shaped, by manifold-3d', () => {
    const skins = skinsOf(solids, mesh as Mesh);
    const faces = new Map(plan.layup.rows.map((row) => [row.id, row.face]));
    for (const { id, row, profile, depth } of plan.chambers) {
      const solid = solidOfChamber(solids, faces.get(row)!, profile, depth);
      for (const patch of PATCHES)
        expect(skins.gap(patch, solid, 60) + SKIN, `${id} ${patch}`).toBeGreaterThan(plan.asked[patch] - 0.1);
      solid.delete();
    }
    skins.free();
  });
});

it('a scan of the shaped board with a hole is refused: what is glued up cannot be planned around it', () => {
  const mesh = holed(drawn.board.mesh, [2000, 100, 140], 60);
  expect(
    read(stlBytes(placed(mesh, put)), SHAPED)
      .findings.map(({ what }) => what)
      .join(),
  ).toMatch(/nothing was measured in places of "shaped.stl": 1 in all/);
});
