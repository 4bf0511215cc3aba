/** The stages at which a builder weighs the board, in the order of the work. */
export const STAGES = [
  'blank', //      strips and stringers glued up
  'shaped', //     nearly to the finished board
  'chambered', //  routed
  'filled', //     blocks in, pieces glued together again
  'sealed', //     shaped out and sealed
  'laminated', //  cloth on both sides
  'hot-coated',
  'fitted', //     fins and fittings in
  'finished', //   sanded out
] as const;
export type Stage = (typeof STAGES)[number];

/** Whether a stage comes at or after another. */
export function isFrom(stage: Stage, from: Stage): boolean {
  return STAGES.indexOf(stage) >= STAGES.indexOf(from);
}

/** Stages by which a board only gets lighter: dust goes. */
export const LIGHTENING: readonly Stage[] = ['shaped', 'chambered', 'finished'];
