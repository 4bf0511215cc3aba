import { PATCHES } from '../board/mesh.js';
import type { Chamber } from '../chamber/chamber.js';
import type { Range, TargetSpec } from '../job/finish.js';
import type { Job, Material } from '../job/job.js';
import { bareOf } from './bare.js';
import { blocksOf } from '../block/blocks.js';
import { tryChambers, type Bench } from './trial.js';
import { USUAL_GLASS } from '../job/usual-glass.js';
import { weightsOn } from './weights.js';

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
  /** The thinnest proven wall, mm; absent where nothing is routed. */
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

/** A lever that is at the end of its bounds, or that has none. */
export interface Hindrance {
  readonly lever: WallName | 'fill' | 'cloth';
  readonly at: 'least' | 'most' | 'fixed';
}

/** A target is met within this: what a scale shows, kg, and what a board balances to, mm. */
export const NEAR = { weight: 0.02, balance: 1 } as const;

/** Wall thicknesses tried before the search, thickest first, as shares of their bounds. */
const SAMPLES = [1, 0.75, 0.5, 0.25, 0] as const;
const MOST_STEPS = 6;

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
 * Finds the plan that meets a target with its walls as thick as can be. All walls go together, each by the same share of its bounds; every fill and
 * cloth is tried with each. Of those that meet the target the one with the thickest walls is taken.
 *
 * Walls are first tried at five shares, each a full plan with its proof; between the two that hold the target it is then closed in on by
 * false position (the Illinois rule: M. Dowell and P. Jarratt, BIT 11 (1971), p. 168).
 */
export function steer(bench: Bench, job: Job, target: TargetSpec, progress: Progress = () => undefined): Steered {
  const aim = target.weight === undefined ? 'balance' : 'weight';
  const asked = target.weight ?? target.balance;
  if (asked === undefined) throw new RangeError('a target asks for a weight or a balance');
  const bare = bareOf(bench.board, bench.layup);
  const choices = choicesOf(job, target);
  const steps = SAMPLES.length + MOST_STEPS;
  const tried: Tried[] = [];

  const attempt = (share: number): Tried => {
    const known = tried.find((each) => each.share === share);
    if (known) return known;
    const { layup, chambers } = tryChambers(bench, withWalls(job, target, share));
    const values = choices.map((choice) => {
      const chosen = withChoice(job, choice);
      const { stages } = weightsOn(bare, layup, chambers, blocksOf(chambers, choice.fill), chosen);
      const { weight, balance } = stages[stages.length - 1]!;
      return { weight, balance: balance.x };
    });
    const result = { share, chambers, values };
    tried.push(result);
    progress(tried.length, steps);
    return result;
  };
  const off = (each: Tried, choice: number) => each.values[choice]![aim] - asked;

  // Without bounds for any wall there is nothing to search along.
  const shares = WALLS.some((wall) => target[wall]) ? SAMPLES : [1];
  const samples = shares.map(attempt);
  const bracket = thickest(choices.map((_, choice) => bracketOf(samples, (each) => off(each, choice), choice)));
  const choice = bracket?.choice ?? nearest(samples, (each, c) => off(each, c)).choice;
  const found = bracket
    ? closeIn(
        bracket,
        (share) => attempt(share),
        (each) => off(each, choice),
        NEAR[aim],
      )
    : nearest(samples, off).tried;
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

interface Bracket {
  readonly choice: number;
  readonly thick: Tried;
  readonly thin: Tried;
  /** Where the target lies by a straight line between the two. */
  readonly share: number;
}

/** The thickest pair of neighbouring samples between which the target lies. */
function bracketOf(samples: readonly Tried[], off: (each: Tried) => number, choice: number): Bracket | undefined {
  for (let i = 0; i < samples.length; i++) {
    const thick = samples[i]!;
    const a = off(thick);
    if (a === 0) return { choice, thick, thin: thick, share: thick.share };
    const thin = samples[i + 1];
    if (!thin || off(thin) * a > 0) continue;
    return { choice, thick, thin, share: thick.share + (a / (a - off(thin))) * (thin.share - thick.share) };
  }
  return undefined;
}

function thickest(brackets: readonly (Bracket | undefined)[]): Bracket | undefined {
  return brackets.reduce((best, each) => (each && each.share > (best?.share ?? -1) ? each : best), undefined);
}

function closeIn(
  bracket: Bracket,
  attempt: (share: number) => Tried,
  off: (each: Tried) => number,
  near: number,
): Tried {
  let [a, b] = [bracket.thick, bracket.thin];
  let [offA, offB] = [off(a), off(b)];
  let best = Math.abs(offA) < Math.abs(offB) ? a : b;
  for (let step = 0; step < MOST_STEPS && Math.abs(off(best)) > near; step++) {
    const middle = attempt(a.share + (offA / (offA - offB)) * (b.share - a.share));
    const here = off(middle);
    if (Math.abs(here) < Math.abs(off(best))) best = middle;
    if (here * offA > 0) {
      a = middle;
      offA = here;
      offB /= 2;
    } else {
      b = middle;
      offB = here;
      offA /= 2;
    }
  }
  return best;
}

function nearest(samples: readonly Tried[], off: (each: Tried, choice: number) => number) {
  let best = { tried: samples[0]!, choice: 0 };
  for (const tried of samples) {
    tried.values.forEach((_, choice) => {
      if (Math.abs(off(tried, choice)) < Math.abs(off(best.tried, best.choice))) best = { tried, choice };
    });
  }
  return best;
}

function choicesOf(job: Job, { fills, cloths }: TargetSpec): Choice[] {
  return (fills ?? [job.fill]).flatMap((fill): Choice[] =>
    cloths ? cloths.map((cloth) => ({ fill, cloth })) : [{ fill }],
  );
}

function withWalls(job: Job, target: TargetSpec, share: number): Job {
  const at = ([least, most]: Range) => least + share * (most - least);
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
