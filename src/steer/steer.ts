import type { Material } from '../job/spec/material.js';
import { PATCHES } from '../board/mesh.js';
import type { Chamber } from '../chamber/chamber.js';
import type { Range, TargetSpec } from '../job/spec/finish.js';
import type { Job } from '../job/job.js';
import { filled, planOf, type Plan } from '../plan.js';
import { USUAL_GLASS } from '../job/usual-glass.js';

export const WALLS = ['deckSkin', 'bottomSkin', 'railWall', 'web'] as const;
export type WallName = (typeof WALLS)[number];

/** The plan that comes nearest to a target. */
export interface Steered {
  /** Whether it meets the target, within `NEAR`. */
  readonly met: boolean;
  /** The job with the walls, the fill and the cloth that were found. */
  readonly job: Job;
  readonly aim: 'weight' | 'balance';
  /** kg, or mm from the nose. */
  readonly asked: number;
  readonly reached: number;
  /** How far the walls lie from their thinnest (0) to their thickest (1) within the bounds. */
  readonly share: number;
  /** The thinnest proved wall, mm; absent where nothing is routed. */
  readonly thinnest?: number;
  /** With the fill and the cloth that were found: what other walls would give, thinnest first. */
  readonly curve: readonly TradeOff[];
  /** What stands in the way where the target is not met. */
  readonly hinders: readonly Hindrance[];
}

export interface TradeOff {
  readonly share: number;
  readonly thinnest?: number;
  /** Finished, kg. */
  readonly weight: number;
  /** mm from the nose. */
  readonly balance: number;
  readonly chambers: number;
}

/**
 * A lever that is at the end of its bounds, or that has none; or walls between two of which the target is passed over
 * in one step.
 */
export interface Hindrance {
  readonly lever: WallName | 'walls' | 'fill' | 'cloth';
  readonly at: 'least' | 'most' | 'fixed' | 'jump';
}

/** A target is met within this: what a scale shows, kg, and what a board balances to, mm. */
export const NEAR = { weight: 0.02, balance: 1 } as const;

/** Wall thicknesses tried before the search, thickest first, as shares of their bounds. */
const SAMPLES = [1, 0.75, 0.5, 0.25, 0] as const;
const MOST_STEPS = 7;
/** Walls are found to this, mm: what is told, and written into the job, is what was planned. */
const STEP = 0.1;
/** Shares nearer to each other than this whose values do not meet are parted by a jump. */
const JUMP = 0.004;
/** Of a bracket, what an estimate is kept off its ends. */
const KEPT_OFF = 0.04;

/** How far a search is: steps done, of so many at most. */
export type Progress = (done: number, of: number) => void;

interface Choice {
  readonly fill: Material;
  readonly cloth?: number;
}

interface Tried {
  readonly share: number;
  readonly chambers: readonly Chamber[];
  /** The value aimed at, for each choice of fill and cloth. */
  readonly values: readonly { readonly weight: number; readonly balance: number }[];
}

/**
 * Finds the plan that meets a target with its walls as thick as can be. All walls go together, each by the same share
 * of its bounds; every fill and cloth is tried with each. Of those that meet the target the one with the thickest walls
 * is taken.
 *
 * Walls are first tried at five shares, each a full plan with its proof; between the two that hold the target it is
 * then closed in on by straight lines, and by halves every third time.
 */
export function steer(before: Plan, job: Job, target: TargetSpec, progress: Progress = () => undefined): Steered {
  const aim = target.weight === undefined ? 'balance' : 'weight';
  const asked = target.weight ?? target.balance;
  if (asked === undefined) throw new RangeError('a target asks for a weight or a balance');
  const choices = choicesOf(job, target);
  const steps = SAMPLES.length + MOST_STEPS;
  const tried: Tried[] = [];

  const attempt = (share: number): Tried => {
    const known = tried.find((each) => each.share === share);
    if (known) return known;
    const walls = withWalls(job, target, share);
    const plan = planOf(walls, before);
    const values = choices.map((choice) => {
      const { stages } = filled(plan, withChoice(walls, choice)).weights;
      const { weight, balance } = stages[stages.length - 1]!;
      return { weight, balance: balance.x };
    });
    const result = { share, chambers: plan.chambers, values };
    tried.push(result);
    progress(tried.length, steps);
    return result;
  };
  const off = (each: Tried, choice: number) => each.values[choice]![aim] - asked;

  // Without bounds for any wall there is nothing to search along.
  for (const share of WALLS.some((wall) => target[wall]) ? SAMPLES : [1]) attempt(share);
  for (let step = 0; step < MOST_STEPS; step++) {
    const bracket = thickestBracket(tried, choices.length, off, NEAR[aim]);
    if (!bracket) break;
    attempt(step % 3 === 2 ? (bracket.thick + bracket.thin) / 2 : bracket.estimate);
  }
  const { found, choice } = best(tried, choices.length, off, NEAR[aim]);
  progress(steps, steps);

  const met = Math.abs(off(found, choice)) <= NEAR[aim];
  const thinnest = thinnestOf(found.chambers);
  return {
    met,
    job: withChoice(withWalls(job, target, found.share), choices[choice]!),
    aim,
    asked,
    reached: found.values[choice]![aim],
    share: found.share,
    ...(thinnest !== undefined && { thinnest }),
    curve: curveOf(tried, choice),
    hinders: met ? [] : hindrances(target, found.share, choices, choice),
  };
}

/** Two shares between which the value meets the target, and where by a straight line between them. */
interface Bracket {
  readonly thick: number;
  readonly thin: number;
  readonly estimate: number;
}

type Off = (each: Tried, choice: number) => number;

/**
 * Of all choices the pair of neighbouring shares with the thickest walls between which the target lies, where no
 * thicker share already meets it. A target that lies in a jump, where a chamber more or less is worth its while, is
 * looked for elsewhere.
 */
function thickestBracket(tried: readonly Tried[], choices: number, off: Off, near: number): Bracket | undefined {
  const byShare = [...tried].sort((a, b) => b.share - a.share);
  for (let i = 0; i < byShare.length; i++) {
    const thick = byShare[i]!;
    const thin = byShare[i + 1];
    const all = Array.from({ length: choices }, (_, choice) => choice);
    if (all.some((choice) => Math.abs(off(thick, choice)) <= near)) return undefined;
    if (!thin || thick.share - thin.share < JUMP) continue;
    const estimates = all.flatMap((choice) => {
      const [a, b] = [off(thick, choice), off(thin, choice)];
      return a * b < 0 ? [thick.share + (a / (a - b)) * (thin.share - thick.share)] : [];
    });
    if (estimates.length === 0) continue;
    // Kept off the ends, so that every step takes a part of the bracket away.
    const margin = (thick.share - thin.share) * KEPT_OFF;
    const estimate = Math.min(thick.share - margin, Math.max(thin.share + margin, ...estimates));
    return { thick: thick.share, thin: thin.share, estimate };
  }
  return undefined;
}

/** What meets the target with the thickest walls, or else comes nearest to it. */
function best(tried: readonly Tried[], choices: number, off: Off, near: number): { found: Tried; choice: number } {
  const miss = ({ found, choice }: { found: Tried; choice: number }) => Math.abs(off(found, choice));
  const all = tried.flatMap((found) => Array.from({ length: choices }, (_, choice) => ({ found, choice })));
  const meet = all.filter((each) => miss(each) <= near);
  return meet.length > 0
    ? meet.reduce((a, b) => (b.found.share > a.found.share ? b : a))
    : all.reduce((a, b) => (miss(b) < miss(a) ? b : a));
}

function choicesOf(job: Job, { fills, cloths }: TargetSpec): Choice[] {
  return (fills ?? [job.fill]).flatMap((fill): Choice[] =>
    cloths ? cloths.map((cloth) => ({ fill, cloth })) : [{ fill }],
  );
}

function withWalls(job: Job, target: TargetSpec, share: number): Job {
  const at = ([least, most]: Range) =>
    Math.min(most, Math.max(least, Math.round((least + share * (most - least)) / STEP) * STEP));
  const walls = WALLS.flatMap((wall) => (target[wall] ? [[wall, at(target[wall])] as const] : []));
  return { ...job, chambers: { ...job.chambers, ...Object.fromEntries(walls) } };
}

/** The cloth is taken for every layer of both sides. */
function withChoice(job: Job, { fill, cloth }: Choice): Job {
  const glass = job.glass ?? USUAL_GLASS;
  if (cloth === undefined) return { ...job, fill };
  const all = (layers: readonly number[]) => layers.map(() => cloth);
  return { ...job, fill, glass: { ...glass, deck: all(glass.deck), bottom: all(glass.bottom) } };
}

function thinnestOf(chambers: readonly Chamber[]): number | undefined {
  if (chambers.length === 0) return undefined;
  return Math.min(...chambers.flatMap(({ wall }) => PATCHES.map((patch) => wall[patch])));
}

function curveOf(tried: readonly Tried[], choice: number): TradeOff[] {
  return [...tried]
    .sort((a, b) => a.share - b.share)
    .map(({ share, chambers, values }): TradeOff => {
      const thinnest = thinnestOf(chambers);
      return { share, ...values[choice]!, chambers: chambers.length, ...(thinnest !== undefined && { thinnest }) };
    });
}

/** Every lever, and whether it is at an end of its bounds or has none. */
function hindrances(target: TargetSpec, share: number, choices: readonly Choice[], choice: number): Hindrance[] {
  const end = share === 0 ? 'least' : share === 1 ? 'most' : undefined;
  const walls = WALLS.flatMap((lever): Hindrance[] =>
    !target[lever] ? [{ lever, at: 'fixed' }] : end ? [{ lever, at: end }] : [],
  );
  const { fill, cloth } = choices[choice]!;
  return [
    ...walls,
    ...endOf(
      'fill',
      target.fills?.map(({ density }) => density),
      fill.density,
    ),
    ...endOf('cloth', target.cloths, cloth ?? NaN),
  ];
}

function endOf(lever: 'fill' | 'cloth', had: readonly number[] | undefined, taken: number): Hindrance[] {
  if (!had || had.length < 2) return [{ lever, at: 'fixed' }];
  if (taken === Math.min(...had)) return [{ lever, at: 'least' }];
  return taken === Math.max(...had) ? [{ lever, at: 'most' }] : [];
}
