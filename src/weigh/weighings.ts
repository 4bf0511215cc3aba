import type { WeighingSpec } from '../job/spec/finish.js';
import { LIGHTENING, STAGES, type Stage } from '../job/spec/stage.js';
import { type Estimate, expectedOf, updated } from './estimate.js';

/** A weighing that cannot be true, or hardly: it is kept, but nothing is learned from it. */
export interface Questioned extends WeighingSpec {
  /**
   * `heavier` – dust went, yet the board gained since `against`; `lighter` – something was put on, yet it lost;
   * `unlikely` – no density and no coat that one meets gives this weight.
   */
  readonly why: 'heavier' | 'lighter' | 'unlikely';
  readonly against?: WeighingSpec;
  /** What was expected, the 90 % band, kg. */
  readonly expected: readonly [number, number];
}

/**
 * 90 of 100 normal values lie within so many standard deviations of the middle (from memory, any table of the normal
 * distribution).
 */
export const BAND = 1.645;
/** A weighing further off than this many standard deviations (one in a thousand) is questioned. */
const UNLIKELY = 3.29;

/**
 * Learns from the weighings in the order of the work. Each is first held against what the ones before it let expect.
 *
 * @param partsAt what each unknown counts for at a stage, kg
 */
export function learnFrom(
  prior: Estimate,
  weighings: readonly WeighingSpec[],
  partsAt: (stage: Stage) => ArrayLike<number>,
): { estimate: Estimate; questioned: Questioned[] } {
  let estimate = prior;
  const trusted: WeighingSpec[] = [];
  const questioned: Questioned[] = [];
  const inOrder = [...weighings].sort((a, b) => STAGES.indexOf(a.stage) - STAGES.indexOf(b.stage));
  for (const weighing of inOrder) {
    const parts = partsAt(weighing.stage);
    const { value, spread } = expectedOf(estimate, parts);
    const expected = [value - BAND * spread, value + BAND * spread] as const;
    const against = trusted.at(-1);
    const wrongWay = against && directionAgainst(weighing, against);
    // A scale is off by less than its reading in nearly all cases: its reading is taken for the 90 % band.
    const scale = weighing.scale / BAND;
    if (wrongWay) questioned.push({ ...weighing, why: wrongWay, against, expected });
    else if (Math.abs(weighing.weight - value) > UNLIKELY * Math.hypot(spread, scale)) {
      questioned.push({ ...weighing, why: 'unlikely', expected });
    } else {
      trusted.push(weighing);
      estimate = updated(estimate, parts, weighing.weight, scale);
    }
  }
  return { estimate, questioned };
}

/**
 * Whether the board went the wrong way between two weighings: every stage between them only takes away, or only adds.
 */
function directionAgainst(later: WeighingSpec, before: WeighingSpec): 'heavier' | 'lighter' | undefined {
  const between = STAGES.slice(STAGES.indexOf(before.stage) + 1, STAGES.indexOf(later.stage) + 1);
  if (between.length === 0) return undefined;
  const gained = later.weight - before.weight;
  const scales = later.scale + before.scale;
  if (gained > scales && between.every((stage) => LIGHTENING.includes(stage))) return 'heavier';
  if (gained < -scales && between.every((stage) => !LIGHTENING.includes(stage) && stage !== 'sealed')) return 'lighter';
  return undefined;
}
