import type { ManifoldToplevel } from 'manifold-3d';
import { PATCHES } from '../../src/board/mesh.js';
import type { Plan } from '../../src/plan.js';
import { outsideOf, solidOfChamber } from '../oracle/kernel.js';

/**
 * The chord error that every wall is reported thinner by, and what the search may leave open, mm; with the kernel's
 * single precision.
 */
const UNDER = 0.1;
const SINGLE = 1e-3;
/** A wall thicker than this is only known to be thicker, mm. */
const LOOK = 60;
/** How much further than the claimed wall the kernel looks, mm: what it does not find there is a disagreement. */
const FURTHER = 1;

/**
 * Everything in which a plan's walls disagree with the solid-geometry kernel, or are thinner than asked; empty when all
 * is well.
 */
export function disagreements(plan: Plan, k: ManifoldToplevel): string[] {
  const outside = outsideOf(k, plan.board.mesh);
  const faces = new Map(plan.layup.rows.map((row) => [row.id, row.face]));
  const found = plan.chambers.flatMap((chamber) => {
    const solid = solidOfChamber(k, faces.get(chamber.row)!, chamber.profile, chamber.depth);
    const least = Math.min(LOOK, ...PATCHES.map((patch) => chamber.wall[patch]));
    const gap = outside.gap(solid, least + FURTHER);
    solid.delete();
    const said: string[] = [];
    if (!(least <= gap + SINGLE)) said.push(`${chamber.id}: ${least} mm is claimed where there are ${gap} mm`);
    if (!(least === LOOK || least >= gap - UNDER - SINGLE))
      said.push(`${chamber.id}: only ${least} mm is claimed where there are ${gap} mm`);
    for (const patch of PATCHES) {
      if (!(chamber.wall[patch] >= plan.asked[patch]))
        said.push(`${chamber.id}: ${patch} ${chamber.wall[patch]} mm, asked ${plan.asked[patch]} mm`);
    }
    if (!(gap >= Math.min(...PATCHES.map((patch) => plan.asked[patch]))))
      said.push(`${chamber.id}: the kernel finds ${gap} mm`);
    return said;
  });
  const [status, genus] = outside.form;
  if (status !== 'NoError' || genus !== -1)
    found.push(`the surface is not one closed solid: ${status}, genus ${genus}`);
  outside.free();
  return found;
}
