import type { Block } from '../block/block.js';
import type { Chamber } from '../chamber/chamber.js';
import type { BuiltFin } from '../fin/finOf.js';
import type { Job } from '../job/job.js';
import { STAGES, type Stage } from '../job/spec/stage.js';
import type { Layup } from '../layup/layup.js';
import type { Bare } from './bare.js';
import { type Moments, momentAbout, sumOf, times } from './moments.js';
import { cutsOf } from './cuts.js';
import { floatOf, type Float, type Water } from './float.js';
import { type Estimate, priorOf, expectedOf, spreadOf } from './estimate.js';
import { ledgerOf, partsAt, type Unknown } from './ledger.js';
import { BAND, learnFrom, type Questioned } from './weighings.js';

/** What the board weighs as the work goes on: foreseen, and corrected by what the scale has said. */
export interface Weights {
  /** All stages, in the order of the work. */
  readonly stages: readonly StageWeight[];
  /** Dust: what is planed and sanded off the glued blank, kg. */
  readonly shapedOff: number;
  /** What the routers take out, kg; and what of it the blocks and their glue do not bring back. */
  readonly routed: number;
  readonly gone: number;
  readonly unknowns: readonly Learned[];
  readonly questioned: readonly Questioned[];
  /** The finished board in water; the glass adds next to nothing to its volume and is left out of it. */
  readonly float: Readonly<Record<Water, Float>>;
}

/**
 * Bands are of 90 %: every unknown is taken to be normally distributed about its value with its spread, a weight is a
 * sum of them, so its variance is the sum of theirs; the band is 1.645 standard deviations either way.
 */
export interface StageWeight {
  readonly stage: Stage;
  /** The likeliest weight and the band it lies in, kg. */
  readonly weight: number;
  readonly low: number;
  readonly high: number;
  /** As it was foreseen before anything was weighed, kg. */
  readonly foreseen: { readonly weight: number; readonly low: number; readonly high: number };
  /** Where it balances, from the nose, and the band, mm. */
  readonly balance: { readonly x: number; readonly low: number; readonly high: number };
  /** What it is made of, kg, by the unknown that it stands for; what was taken off counts against. */
  readonly parts: readonly { readonly id: string; readonly weight: number }[];
  /** Moment of inertia about an upright axis through its middle: how hard it is to swing round, kg·m². */
  readonly swing: number;
}

/** An unknown before and after the weighings. */
export interface Learned extends Unknown {
  readonly learned: { readonly value: number; readonly spread: number };
}

export function weightsOf(
  bare: Bare,
  fins: readonly BuiltFin[],
  layup: Layup,
  chambers: readonly Chamber[],
  blocks: readonly Block[],
  job: Job,
): Weights {
  const cuts = cutsOf(chambers, layup);
  const ledger = ledgerOf(bare, fins, layup, cuts, blocks, job);
  const parts = new Map(STAGES.map((stage) => [stage, partsAt(ledger, stage)]));
  const prior = priorOf(ledger.unknowns);
  const amounts = (stage: Stage) => parts.get(stage)!.map(({ amount }) => amount);
  const { estimate, questioned } = learnFrom(prior, job.weighings ?? [], amounts);

  const ids = ledger.unknowns.map(({ id }) => id);
  const stages = STAGES.map((stage) => stageOf(stage, ids, parts.get(stage)!, prior, estimate, bare.length));
  const at = (stage: Stage) => stages.find((each) => each.stage === stage)!.weight;
  return {
    stages,
    shapedOff: at('blank') - at('shaped'),
    routed: at('shaped') - at('chambered'),
    gone: at('shaped') - at('filled'),
    unknowns: ledger.unknowns.map((unknown, i) => ({
      ...unknown,
      learned: { value: estimate.values[i]!, spread: spreadOf(estimate, i) },
    })),
    questioned,
    float: floatOf(bare.volume, at('finished'), job.rider),
  };
}

function stageOf(
  stage: Stage,
  ids: readonly string[],
  parts: readonly Moments[],
  prior: Estimate,
  estimate: Estimate,
  length: number,
): StageWeight {
  const amounts = parts.map(({ amount }) => amount);
  const whole = sumOf(parts.map((moments, i) => times(moments, estimate.values[i]!)));
  const now = banded(estimate, amounts);
  const x = whole.x / whole.amount;
  // How the balance moves with each unknown: the derivative of ∫x / ∫1.
  const leaning = parts.map((moments) => (moments.x - x * moments.amount) / whole.amount);
  const off = BAND * expectedOf(estimate, leaning).spread;
  return {
    stage,
    ...now,
    foreseen: banded(prior, amounts),
    balance: { x, low: x - off, high: x + off },
    parts: parts.flatMap(({ amount }, i) =>
      amount === 0 ? [] : [{ id: ids[i]!, weight: amount * estimate.values[i]! }],
    ),
    swing: momentAbout(whole, length / 2) / 1e6,
  };
}

function banded(estimate: Estimate, amounts: readonly number[]) {
  const { value, spread } = expectedOf(estimate, amounts);
  return { weight: value, low: value - BAND * spread, high: value + BAND * spread };
}
