import type { Chamber } from '../chamber/chamber.js';
import { areaOf } from '../chamber/contour.js';
import type { ChamberSpec } from '../job/job.js';
import type { RoutingSpec } from '../job/routing.js';
import { WRITTEN_STEP } from '../length/rounded.js';
import { MM_PER_INCH, type Units } from '../length/units.js';
import { cheapest } from './cheapest.js';
import { levelled, longestRun, settingSlack, type Levelled } from './inscribed.js';
import type { CurvePoint } from './rout.js';

/** What a shared guide lets the cutter leave, mm: a rectangle with corners of the cutter's radius. */
export interface Size {
  readonly length: number;
  readonly height: number;
}

/** A chamber and the shared size it is cut to; undefined where it keeps its own. */
export interface Cut {
  readonly chamber: Chamber;
  readonly level: Levelled;
  readonly size: Size | undefined;
}

export interface Family {
  readonly cuts: readonly Cut[];
  readonly curve: readonly CurvePoint[];
}

/** Sizes are whole steps, so that a guide is made to a figure that stands on a rule: 1 mm or 1/16 in. */
const STEP: Readonly<Record<Units, number>> = { mm: 1, in: MM_PER_INCH / 16 };
/** The curve goes at least to so many guides, and to no more than so many. */
const CURVE = 8;
const MOST = 40;
/** mm³ in a litre. */
const LITRE = 1e6;

type Rules = Pick<ChamberSpec, 'smallest' | 'cutterDiameter'>;

/**
 * The guides that lose least volume when chambers share them: so many as the job says, or as few as keep the loss within its share.
 *
 * The shape class is rectangles of whole steps with corners of the cutter's radius, turned with each chamber. Of all sizes only those can be best that
 * cannot grow without fitting fewer chambers; among these the choice is bounded from below (see `cheapest.ts`).
 */
export function familyOf(
  chambers: readonly Chamber[],
  guides: NonNullable<RoutingSpec['guides']>,
  spec: Rules,
  units: Units,
): Family {
  const step = STEP[units];
  const levels = chambers.map(({ contour }) => levelled(contour));
  const runs = levels.map((level) => runsOf(level, spec, step, WRITTEN_STEP[units]));
  const shared = chambers.flatMap((_, i) => (runs[i]!.length > 0 ? [i] : []));
  const sizes = sizesOf(
    shared.map((i) => runs[i]!),
    spec,
    step,
  );
  const whole = shared.map((i) => areaOf(chambers[i]!.contour) * chambers[i]!.depth[1]);
  const total = whole.reduce((sum, volume) => sum + volume, 0);
  const costs = sizes.map((size) =>
    Float64Array.from(shared, (i, row) =>
      fits(runs[i]!, size, spec, step) ? whole[row]! - areaWithin(size, spec) * chambers[i]!.depth[1] : Infinity,
    ),
  );

  const curve: CurvePoint[] = [];
  let columns: readonly number[] = [];
  let chosen: readonly number[] = [];
  for (let count = 1; count <= Math.min(MOST, sizes.length); count++) {
    const choice = cheapest(costs, count, columns);
    ({ columns } = choice);
    curve.push({ guides: count, lost: choice.cost / LITRE, bound: choice.bound / LITRE });
    const enough = guides.kind === 'count' ? count >= guides.count : choice.cost <= guides.share * total;
    if (guides.kind === 'count' ? count === guides.count : chosen.length === 0 && enough) chosen = columns;
    if (enough && count >= CURVE) break;
  }
  if (chosen.length === 0) chosen = columns;

  const cuts = chambers.map((chamber, i): Cut => {
    const row = shared.indexOf(i);
    const best = row < 0 ? undefined : chosen.reduce((a, b) => (costs[b]![row]! < costs[a]![row]! ? b : a), chosen[0]!);
    return { chamber, level: levels[i]!, size: best === undefined ? undefined : sizes[best] };
  });
  return { cuts, curve };
}

/** The fewest steps high a shared cut may be. */
function leastSteps({ smallest, cutterDiameter }: Rules, step: number): number {
  return Math.ceil(Math.max(smallest.height, cutterDiameter) / step - ROUNDING);
}

/** mm, and steps. */
const ROUNDING = 1e-9;

/** The longest whole length that fits into a chamber at each height, wherever a rule sets it, from the least height up; ends where the smallest length fits no more. */
function runsOf(level: Levelled, spec: Rules, step: number, set: number): number[] {
  const least = Math.max(spec.smallest.length, spec.cutterDiameter);
  const slack = settingSlack(level, set);
  const runs: number[] = [];
  for (let steps = leastSteps(spec, step); ; steps++) {
    const run = longestRun(level, steps * step + 2 * slack.v);
    const length = run ? Math.floor((run.to - run.from - 2 * slack.u) / step + ROUNDING) * step : 0;
    if (length < least) return runs;
    runs.push(length);
  }
}

/** All sizes that fit some chamber tightly and cannot grow higher without fitting fewer. */
function sizesOf(runs: readonly (readonly number[])[], spec: Rules, step: number): Size[] {
  const sizes: Size[] = [];
  const highest = Math.max(0, ...runs.map((run) => run.length));
  for (let k = 0; k < highest; k++) {
    const served = (length: number, at: number) => runs.filter((run) => (run[at] ?? 0) >= length).length;
    for (const length of new Set(runs.flatMap((run) => run[k] ?? []))) {
      if (served(length, k + 1) < served(length, k))
        sizes.push({ length, height: (leastSteps(spec, step) + k) * step });
    }
  }
  return sizes;
}

function fits(runs: readonly number[], { length, height }: Size, spec: Rules, step: number): boolean {
  return (runs[Math.round(height / step) - leastSteps(spec, step)] ?? 0) >= length;
}

/** Area of the cut, its corners eased: l·h − (4 − π)·r², mm². */
function areaWithin({ length, height }: Size, { cutterDiameter }: Rules): number {
  return length * height - (4 - Math.PI) * (cutterDiameter / 2) ** 2;
}
