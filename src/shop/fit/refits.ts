import { planMadeTo, refitOf, type Elsewhere, type Misfit } from './refit.js';
import { isSameFoam, shapesOf, turnThatSuits, turnToTrim, volumeOf } from './shape.js';
import { stageOf, UNTOUCHED, type ShopState } from '../log/state.js';
import { stepsBehind } from '../log/step.js';
import type { TrackedBlock } from '../log/trackedBlock.js';

/**
 * Every block in hand that today's plan no longer agrees with. Blocks that still fit are not listed. What is left over
 * is tried in every other place that has no block yet, each block told for one place at most.
 *
 * @param planned the blocks of today's plan
 * @param plans every plan that was in force, as recorded then
 */
export function refitsOf(
  planned: readonly TrackedBlock[],
  state: ShopState,
  plans: readonly { readonly number: number; readonly blocks: readonly TrackedBlock[] }[],
): ReadonlyMap<string, Misfit> {
  const now = new Map(planned.map((block) => [block.id, block]));
  const earlier = new Map<number, ReadonlyMap<string, TrackedBlock>>();
  const refits = new Map<string, Misfit>();
  const leftOver: TrackedBlock[] = [];
  for (const [id, block] of state.blocks) {
    const plan = planMadeTo(block);
    if (plan === undefined) continue;
    let made = earlier.get(plan);
    if (!made) {
      made = new Map((plans.find(({ number }) => number === plan)?.blocks ?? []).map((one) => [one.id, one]));
      earlier.set(plan, made);
    }
    const before = made.get(id);
    if (!now.has(id)) refits.set(id, { kind: 'unused' });
    if (!before) continue;
    const refit = refitOf(before, now.get(id), block);
    if (refit.kind === 'fits') continue;
    refits.set(id, refit);
    if ((refit.kind === 'new' || refit.kind === 'unused') && isLoose(state, id)) leftOver.push(before);
  }
  const open = planned.filter(({ id }) => refits.get(id)?.kind === 'new' || !isInHand(state, id));
  const places = otherPlaces(leftOver, open);
  for (const { id } of leftOver) {
    const refit = refits.get(id)!;
    if (refit.kind !== 'new' && refit.kind !== 'unused') continue;
    refits.set(id, { ...refit, elsewhere: places.get(id) ?? 'none' });
  }
  return refits;
}

/**
 * For each block left over a place it serves: those that fit as they are first, then those with the least to trim off.
 */
function otherPlaces(leftOver: readonly TrackedBlock[], open: readonly TrackedBlock[]): ReadonlyMap<string, Elsewhere> {
  const found = new Map<string, Elsewhere>();
  const taken = new Set<string>();
  for (const trim of [false, true]) {
    for (const made of leftOver) {
      if (found.has(made.id)) continue;
      const candidates = open
        .filter(({ id }) => id !== made.id && !taken.has(id))
        .map((block) => ({ block, shapes: shapesOf(made, block) }))
        .filter(({ shapes }) => isSameFoam(...shapes))
        .map(({ block, shapes }) => ({ block, shapes, waste: volumeOf(shapes[0]) - volumeOf(shapes[1]) }))
        .sort((a, b) => (trim ? a.waste - b.waste : Math.abs(a.waste) - Math.abs(b.waste)));
      for (const { block, shapes } of candidates) {
        const turned = trim ? turnToTrim(...shapes) : turnThatSuits(...shapes);
        if (turned === false) continue;
        found.set(made.id, { place: block.id, trim, ...(turned && { turned }) });
        taken.add(block.id);
        break;
      }
    }
  }
  return found;
}

/** Cut, and not glued in. */
function isLoose(state: ShopState, id: string): boolean {
  return isInHand(state, id) && stageOf(state.blocks.get(id)) !== 'glued';
}

function isInHand(state: ShopState, id: string): boolean {
  return stepsBehind(stageOf(state.blocks.get(id) ?? UNTOUCHED)) >= stepsBehind('cut');
}
