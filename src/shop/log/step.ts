/** What happens to a fill block between the plan and the board, in the order it is done. */
export const STEPS = ['marked', 'cut', 'sanded', 'dry-fitted', 'glued'] as const;

export type Step = (typeof STEPS)[number];

/** Whether a word names a step. */
export function isStep(word: string): word is Step {
  return (STEPS as readonly string[]).includes(word);
}

/** How many steps a block that stands at `stage` has behind it: 0 for none, 5 for a glued one. */
export function stepsBehind(stage: Step | undefined): number {
  return stage === undefined ? 0 : STEPS.indexOf(stage) + 1;
}

/** The step after `stage`, or none once the block is glued in. */
export function stepAfter(stage: Step | undefined): Step | undefined {
  return STEPS[stepsBehind(stage)];
}

/** For each step, in order, whether a block that stands at `stage` has it behind it: the ticks of the printed list. */
export function ticksOf(stage: Step | undefined): readonly boolean[] {
  return STEPS.map((_, i) => i < stepsBehind(stage));
}
