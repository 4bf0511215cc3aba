import type { Chamber } from '../../chamber/chamber.js';
import { goesThrough } from '../../chamber/through.js';
import type { Row } from '../../layup/layup.js';
import { printLength } from '../../length/length.js';
import type { Plan } from '../../plan.js';
import { saidRouting } from '../../rout/depthLines.js';
import { routingOf } from './routingOf.js';
import { say, WORDS } from '../../words/say.js';

/**
 * How deep a chamber is routed, in words: `deep 1 in`, that it goes right through the piece, or half of it from either
 * face.
 */
export function depthWords(chamber: Chamber, row: Row, plan: Plan): string {
  const { units, routing } = plan.job;
  const its = routingOf(plan, chamber);
  const depth = printLength(saidRouting(its, routing, units).depth, units);
  if (its.from.length > 1) return say(WORDS.face.half, { depth });
  return say(goesThrough(chamber, row) ? WORDS.face.through : WORDS.face.deep, { depth });
}

/** The same as it stands on the face, with the shared guide that the chamber is routed with. */
export function faceWords(chamber: Chamber, row: Row, plan: Plan): string {
  const depth = depthWords(chamber, row, plan);
  const guide = plan.routing.settings.find((setting) => setting.chamber === chamber.id)?.guide;
  return guide ? say(WORDS.face.guided, { guide, depth }) : depth;
}
