import type { Plan } from '../plan.js';
import { proofOf } from '../proof/proof.js';
import { isWell, sayVerdict, verdictOf } from '../verdict/verdict.js';
import type { Io } from './io.js';

/** Says whether a plan stands; gives whether there is nothing to act on. */
export function judged(plan: Plan, io: Io): boolean {
  const verdict = verdictOf(plan, proofOf(plan));
  const say = isWell(verdict) ? io.out : io.err;
  sayVerdict(verdict, plan).forEach((line) => say(line));
  return isWell(verdict);
}
