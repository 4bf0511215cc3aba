import type { ManifoldToplevel } from 'manifold-3d';
import { PATCHES } from '../../src/board/mesh.js';
import type { Plan } from '../../src/plan.js';
import { outsideOf, solidOfChamber } from '../oracle/kernel.js';
import { SKIN, skinsOf } from '../oracle/patches.js';

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
 * Everything in which a plan's walls, each of the three, disagree with the solid-geometry kernel, or are thinner than
 * asked; empty when all is well.
 */
export function disagreements(plan: Plan, k: ManifoldToplevel): string[] {
  const skins = skinsOf(k, plan.board.mesh);
  const faces = new Map(plan.layup.rows.map((row) => [row.id, row.face]));
  const found = plan.chambers.flatMap((chamber) => {
    const solid = solidOfChamber(k, faces.get(chamber.row)!, chamber.profile, chamber.depth);
    const said = PATCHES.flatMap((patch) => {
      const claimed = Math.min(LOOK, chamber.wall[patch]);
      const look = claimed + FURTHER;
      const gap = skins.gap(patch, solid, look);
      const isFar = (there: number) => claimed !== LOOK && claimed < there - UNDER - SINGLE;
      const where = `${chamber.id}: toward the ${patch} ${claimed} mm`;
      return [
        ...(claimed <= gap + SINGLE ? [] : [`${where} are claimed where there are ${gap} mm`]),
        ...(isFar(gap) && isFar(skins.leastGap(patch, solid, look))
          ? [`${where} are claimed where there are even ${gap} mm`]
          : []),
        ...(chamber.wall[patch] >= plan.asked[patch] ? [] : [`${where}, asked ${plan.asked[patch]} mm`]),
        ...(gap >= Math.min(LOOK, plan.asked[patch] - SKIN) ? [] : [`${where}, the kernel finds ${gap} mm`]),
      ];
    });
    solid.delete();
    return said;
  });
  skins.free();
  const outside = outsideOf(k, plan.board.mesh);
  const [status, genus] = outside.form;
  outside.free();
  if (status !== 'NoError' || genus !== -1)
    found.push(`the surface is not one closed solid: ${status}, genus ${genus}`);
  return found;
}
