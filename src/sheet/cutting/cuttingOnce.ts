import { cuttingOf, type Cutting } from '../../block/cut/cutting.js';
import type { Plan } from '../../plan.js';

const made = new WeakMap<Plan, Cutting>();

/** How the blocks of a plan are cut and glued; looked for when the first paper or list asks for it, and once. */
export function cuttingOnce(plan: Plan): Cutting {
  const cutting = made.get(plan) ?? cuttingOf(plan);
  made.set(plan, cutting);
  return cutting;
}
