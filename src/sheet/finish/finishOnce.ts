import { finishOf } from '../../finish/finishOf.js';
import { once } from '../../kept/once.js';
import type { Plan } from '../../plan.js';

/** How a board is finished; worked out when the first paper asks for it, and once. */
export const finishOnce = once((plan: Plan) => finishOf(plan));
