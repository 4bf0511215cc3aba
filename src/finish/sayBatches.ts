import words from '../../templates/finish.json' with { type: 'json' };
import { printPoured } from '../length/weight.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import type { Coat } from './finishOf.js';

/** In how many batches a coat's resin is mixed, and how much each. */
export function sayBatches({ mix, batches }: Pick<Coat, 'mix' | 'batches'>, units: Units): string {
  const { one, many } = words.batches;
  return batches === 1 ? one : say(many, { count: batches, each: printPoured(mix / batches, units) });
}
