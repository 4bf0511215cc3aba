import { areaOf } from '../contour/area.js';
import type { Chamber } from '../chamber/chamber.js';
import type { ChamberSpec } from '../job/job.js';
import type { RoutingSpec } from '../job/spec/routing.js';
import { WRITTEN_STEP } from '../length/rounded.js';
import { MM_PER_INCH, type Units } from '../length/units.js';
import { pMedian, type Medians } from './pMedian.js';
import { costTableOf, leastCost, type CostTable } from './costTable.js';
import { levelled, longestRun, settingSlack, type Levelled } from './inscribed.js';
import type { CurvePoint } from './rout.js';

/** What a shared guide lets the cutter leave, mm: a rectangle with corners of the cutter's radius. */
export interface Size {
  readonly length: number;
  readonly height: number;
}

/** A chamber and the shared size it is cut to; undefined where it keeps its own. */
export interface AssignedSize {
  readonly chamber: Chamber;
  readonly level: Levelled;
  readonly size: Size | undefined;
}

export interface Family {
  readonly cuts: readonly AssignedSize[];
  readonly curve: readonly CurvePoint[];
  /**
   * What they lose of what is routed out, as a share: more than was asked where no guides of this shape, or not so few,
   * keep within it.
   */
  readonly lost: number;
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
 * The guides that lose least volume when chambers share them: so many as the job says, or as few as keep the loss
 * within its share. There are never more than save anything, nor than `MOST`: where that many still lose more than the
 * share, `lost` tells.
 *
 * The shape class is rectangles of whole steps with corners of the cutter's radius, turned with each chamber. Of all
 * sizes only those can be best that cannot grow without fitting fewer chambers; among these the choice is bounded from
 * below (see `pMedian.ts`).
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
  const alike = alikeIn(runs);
  const sizes = sizesOf(
    alike.map((those) => runs[those[0]!]!),
    spec,
    step,
  );
  const table = costTableOf(
    sizes.map((size) =>
      Float64Array.from(alike, (those) =>
        fits(runs[those[0]!]!, size, spec, step)
          ? those.reduce((sum, i) => sum + lostOf(chambers[i]!, size, spec), 0)
          : Infinity,
      ),
    ),
  );
  const total = alike.flat().reduce((sum, i) => sum + areaOf(chambers[i]!.contour) * chambers[i]!.depth[1], 0);

  const { chosen, curve, cost } = chosenOf(table, guides, total);
  const cuts = chambers.map((chamber, i): AssignedSize => {
    const fitting = chosen.map((c) => sizes[c]!).filter((size) => fits(runs[i]!, size, spec, step));
    const size = fitting.reduce<Size | undefined>(
      (a, b) => (!a || areaWithin(b, spec) > areaWithin(a, spec) ? b : a),
      undefined,
    );
    return { chamber, level: levels[i]!, size };
  });
  return { cuts, curve, lost: total > 0 ? cost / total : 0 };
}

/**
 * So many columns as asked, or as few as keep within the share of the total, and what every number of them costs at
 * best.
 */
function chosenOf(table: CostTable, guides: NonNullable<RoutingSpec['guides']>, total: number) {
  // What is lost when each chamber has its own guide of this shape: from there on no guide more saves anything.
  const least = leastCost(table) * (1 + ROUNDING);
  const curve: CurvePoint[] = [];
  let last: Medians | undefined;
  let chosen: Medians | undefined;
  for (let count = 1; count <= Math.min(MOST, table.columns); count++) {
    last = pMedian(table, count, last?.columns);
    curve.push({ guides: count, lost: last.cost / LITRE, bound: last.bound / LITRE });
    const enough = guides.kind === 'count' ? count >= guides.count : last.cost <= guides.share * total;
    if (enough) chosen ??= last;
    if ((enough && count >= CURVE) || last.cost <= least) break;
  }
  const { columns, cost } = chosen ?? last ?? { columns: [], cost: 0 };
  return { chosen: columns, cost, curve };
}

/** The chambers that can be cut to some size, those together that can be cut to the same ones, as mirror images can. */
function alikeIn(runs: readonly (readonly number[])[]): number[][] {
  const alike = new Map<string, number[]>();
  runs.forEach((run, i) => {
    if (run.length === 0) return;
    const key = run.join(' ');
    const those = alike.get(key);
    if (those) those.push(i);
    else alike.set(key, [i]);
  });
  return [...alike.values()];
}

/** What a chamber loses when it is cut to a size, mm³. */
function lostOf({ contour, depth }: Chamber, size: Size, spec: Rules): number {
  return (areaOf(contour) - areaWithin(size, spec)) * depth[1];
}

/** The fewest steps high a shared cut may be. */
function leastSteps({ smallest, cutterDiameter }: Rules, step: number): number {
  return Math.ceil(Math.max(smallest.height, cutterDiameter) / step - ROUNDING);
}

/** mm, steps, and as a share. */
const ROUNDING = 1e-9;

/**
 * The longest whole length that fits into a chamber at each height, wherever a rule sets it, from the least height up;
 * ends where the smallest length fits no more.
 */
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
