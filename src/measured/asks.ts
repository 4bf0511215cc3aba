import type { Stage } from '../job/spec/stage.js';

/** What is asked for where a phase of the work is to be measured, and the tracker takes it. */
export type Asks =
  | { readonly of: 'weight'; readonly stage: Stage }
  | { readonly of: 'thickness' | 'width' | 'wall' | 'density' | 'printer' }
  | { readonly of: 'fin'; readonly part: FinPart };

/** What is measured of a fin while it is made: its panel as cured, the glued-up blank, its weight. */
export type FinPart = 'panel' | 'blank' | 'weight';
