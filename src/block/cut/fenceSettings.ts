import { SAME_SIZE } from '../nest/cutPart.js';
import type { Cut, CutSheet } from './cutPlan.js';

/** One position of the fence and all cuts that are made with it. */
export interface FenceSetting {
  readonly stage: number;
  readonly run: Cut['run'];
  /** Between fence and blade, mm. */
  readonly fence: number;
  readonly cuts: readonly { readonly sheet: number; readonly number: number }[];
}

/**
 * The fence settings of some sheets, stage by stage, rips before cross-cuts, the widest first, so that the fence moves
 * one way only.
 */
export function fenceSettings(sheets: readonly CutSheet[]): FenceSetting[] {
  const cuts = sheets.flatMap((sheet) =>
    sheet.cuts.flatMap((cut) => (cut.fence === undefined ? [] : [{ sheet: sheet.number, ...cut, fence: cut.fence }])),
  );
  cuts.sort(
    (a, b) =>
      a.stage - b.stage ||
      RUN_ORDER[a.run] - RUN_ORDER[b.run] ||
      b.fence - a.fence ||
      a.sheet - b.sheet ||
      a.number - b.number,
  );
  const settings: { stage: number; run: Cut['run']; fence: number; cuts: { sheet: number; number: number }[] }[] = [];
  for (const { stage, run, fence, sheet, number } of cuts) {
    const last = settings.at(-1);
    if (last?.stage === stage && last.run === run && last.fence - fence <= SAME_SIZE) last.cuts.push({ sheet, number });
    else settings.push({ stage, run, fence, cuts: [{ sheet, number }] });
  }
  return settings;
}

/** Rips before cross-cuts: a rip needs the whole length to run on. */
const RUN_ORDER = { along: 0, across: 1 } as const;
