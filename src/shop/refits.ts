import { planMadeTo, refitOf, type Refit } from './refit.js';
import type { ShopState } from './state.js';
import type { TrackedBlock } from './trackedBlock.js';

/**
 * Every block in hand that today's plan no longer agrees with. Blocks that still fit are not listed.
 *
 * @param planned the blocks of today's plan
 * @param blocksOfPlan the blocks of an earlier plan by its number, as recorded when it was in force
 */
export function refitsOf(
  planned: readonly TrackedBlock[],
  state: ShopState,
  blocksOfPlan: (plan: number) => readonly TrackedBlock[] | undefined,
): ReadonlyMap<string, Exclude<Refit, { kind: 'fits' }>> {
  const now = new Map(planned.map((block) => [block.id, block]));
  const earlier = new Map<number, ReadonlyMap<string, TrackedBlock>>();
  const refits = new Map<string, Exclude<Refit, { kind: 'fits' }>>();
  for (const [id, block] of state.blocks) {
    const plan = planMadeTo(block);
    if (plan === undefined) continue;
    let made = earlier.get(plan);
    if (!made) {
      made = new Map((blocksOfPlan(plan) ?? []).map((one) => [one.id, one]));
      earlier.set(plan, made);
    }
    const before = made.get(id);
    if (!now.has(id)) refits.set(id, { kind: 'unused' });
    if (!before) continue;
    const refit = refitOf(before, now.get(id), block);
    if (refit.kind !== 'fits') refits.set(id, refit);
  }
  return refits;
}
