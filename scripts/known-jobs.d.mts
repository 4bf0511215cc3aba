import type { CutPart, CutStock, SawSetting } from '../src/block/nest/cutPart.js';

export interface KnownJob {
  readonly parts: CutPart[];
  readonly sheet: CutStock;
  readonly saw: SawSetting;
  /** So many suffice, and by their area no fewer. */
  readonly sheets: number;
  /** The share of the sheets that is blocks and their saw cuts, 0..1. */
  readonly fill: number;
}

export function knownJob(draw: () => number, few: boolean, most?: number): KnownJob;
