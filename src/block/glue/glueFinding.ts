import type { GlueFinding } from './batches.js';

const WORDS = {
  openTime: "the glue's open time",
  minutesPerBlock: 'the minutes a block takes',
  clampSpacing: 'the spacing of the clamps',
  spread: 'the spread of the glue',
  loss: 'the loss of glue',
} as const;

/** A finding about gluing in one sentence, with what to do. */
export function sayGlueFinding(finding: GlueFinding): string {
  if (finding.kind === 'not-a-number') {
    const least = finding.what === 'loss' ? 'of 0 or more' : 'above 0';
    return `Gluing: ${WORDS[finding.what]} is not a number ${least}. Give one; no batches are planned until then.`;
  }
  return `Gluing: one block takes ${finding.needs} min, the glue stays open for ${finding.openTime} min. Use a slower glue, or two pairs of hands so that a block takes at most ${finding.openTime} min.`;
}
