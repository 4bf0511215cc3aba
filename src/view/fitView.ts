import { once } from '../kept/once.js';
import type { Point } from '../contour/point.js';
import type { Plan } from '../plan.js';
import type { InBlank, Least } from '../stock/inBlank.js';
import type { Placement } from '../stock/placement.js';
import type { ShortPlace } from '../stock/short.js';
import { stripMaps, type StripMap } from '../stock/stripMap.js';
import { boardInFoam, type BoardInFoam } from './boardInFoam.js';
import { fitFromSide, type FitFromSide } from './fitFromSide.js';
import { stripsInPlan } from './stripsInPlan.js';

/** What a picture of the board in its blank is drawn from. Board frame, mm. */
export interface FitView {
  readonly placement: Placement;
  /** What is to stand over the board everywhere. */
  readonly asked: number;
  readonly isAlike: boolean;
  readonly strips: readonly (readonly Point[])[];
  readonly maps: readonly StripMap[];
  readonly side: FitFromSide;
  /** How the board lies in the foam of the strips, as it is marked. */
  readonly lying: readonly BoardInFoam[];
  readonly least: readonly Least[];
  readonly short: readonly ShortPlace[];
}

/** Undefined where the job has no moulded blank. Made once for each fit: other changes of a job leave it as it is. */
export function fitViewOf({ stock }: Pick<Plan, 'stock'>): FitView | undefined {
  return stock?.blank && viewOf(stock.blank);
}

const viewOf = once((blank: InBlank): FitView => {
  const { fits, asked, isAlike, finished, least, short } = blank;
  return {
    placement: fits[0]!.placement,
    asked,
    isAlike,
    strips: stripsInPlan(blank),
    maps: stripMaps(finished, blank),
    side: fitFromSide(finished, blank),
    lying: boardInFoam(blank),
    least,
    short,
  };
});
