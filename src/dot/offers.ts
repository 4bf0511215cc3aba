import type { DotSpec } from '../job/spec/dots.js';
import { type JointFace, type Lines } from './jointFace.js';
import { placesAlong } from './places.js';
import { isMet, priceOf, reachOf, type PriceRules, type Round, type Standing } from './standing.js';
import type { JointOffers } from './together.js';

/** A joint, and the places on it where a dot keeps its margin. */
export interface OpenJoint extends JointOffers<Round> {
  /** Whether it is high enough anywhere for a dot within its margin. */
  readonly hasRoom: boolean;
}

/**
 * What can be chosen on a joint. A dot lies in the middle of the face, or as high or low as it may where it then costs
 * less: above or below a low chamber.
 *
 * @param room how high and low the middle of a dot may lie
 * @param made the dots that it holds already, in place of all others
 */
export function offersOn(
  face: JointFace,
  room: Lines,
  { diameter, clearance, spacing, nearEnd }: DotSpec,
  standing: Standing,
  rules: PriceRules,
  made?: readonly Round[],
): OpenJoint {
  const radius = diameter / 2;
  const places = placesAlong(face, room, radius + clearance, spacing, standing);
  const offers = made ?? places.map((place): Round => cheapest(face, { ...place, radius }, standing, rules));
  const ends = places.length > 0 ? places : offers;
  return {
    rows: face.rows,
    offers,
    spacing: {
      from: ends[0]?.s ?? 0,
      to: ends[ends.length - 1]?.s ?? 0,
      most: spacing,
      least: diameter + clearance,
      nearEnd,
    },
    isMade: made !== undefined,
    hasRoom: ends.length > 0,
  };
}

/** The dot at one place along a joint, at the height where it costs its rows least. */
function cheapest(
  face: JointFace,
  { s, low, high, radius }: { s: number; low: number; high: number; radius: number },
  standing: Standing,
  rules: PriceRules,
): Round {
  const middle = { s, z: (low + high) / 2, radius };
  const sides = face.rows.map((at) => {
    const reach = reachOf(at, middle, rules);
    return { at, parts: (standing.get(at.row.id) ?? []).filter((part) => isMet(reach, part)) };
  });
  const spare = Math.min(SPARE, (high - low) / 2);
  const others = [high - spare, low + spare].filter((z) => {
    const [under, over] = [z - radius - rules.clearance, z + radius + rules.clearance];
    return sides.some(({ parts }) =>
      parts.some(
        (part) =>
          under - part.low >= rules.smallest.height ||
          part.high - over >= rules.smallest.height ||
          under >= part.high ||
          over <= part.low,
      ),
    );
  });
  if (others.length === 0) return middle;
  const cost = (dot: Round) =>
    sides.reduce((sum, { at, parts }) => sum + (priceOf(at, dot, parts, rules)?.lost ?? Infinity), 0);
  let [best, least] = [middle, cost(middle)];
  for (const z of least > 0 ? others : []) {
    const own = cost({ s, z, radius });
    if (own < least) [best, least] = [{ s, z, radius }, own];
  }
  return best;
}

/**
 * Kept from the highest and lowest that a dot's middle may lie, mm: shaping may take so much more than was drawn before
 * a dot above or below the middle shows. Common practice, no source.
 */
const SPARE = 6;
