import { cuttingOf } from '../../block/cut/cutting.js';
import { once } from '../../kept/once.js';
import type { Plan } from '../../plan.js';

/** How the blocks of a plan are cut and glued; looked for when the first paper or list asks for it, and once. */
export const cuttingOnce = once((plan: Plan) => cuttingOf(plan));
