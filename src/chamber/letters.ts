import type { ChamberSpec } from '../job/job.js';
import type { Stretch } from './stretch.js';

/**
 * The letters behind the name of a place, one for each of the parts that stand in it, from the nose: `a` where another
 * chamber would fit into the place behind it, toward the tail; `b` where one would fit before it; `c` where both; none
 * where there is no room for another. A letter so hangs on where its own part lies in the place: it stays when what is
 * beside it changes, or is left solid.
 *
 * @param place what a chamber would take there if nothing were gone around; undefined where nothing is
 */
export function lettersOf(place: Stretch | undefined, parts: readonly Stretch[], spec: Spec): string[] {
  if (!place) return parts.map(() => '');
  // Neighbours are drawn apart by half a web each at most, which is given back where one is left out.
  const another = spec.smallest.length + spec.web / 2;
  const taken: string[] = [];
  for (const { from, to } of parts) {
    const hasBefore = from - place.from >= another;
    const hasBehind = place.to - to >= another;
    const own = hasBefore && hasBehind ? 'c' : hasBehind ? 'a' : hasBefore ? 'b' : '';
    taken.push(taken.includes(own) ? FURTHER.find((letter) => !taken.includes(letter))! : own);
  }
  return taken;
}

type Spec = Pick<ChamberSpec, 'web' | 'smallest'>;

/** For what lies between two that lie between, which hardly ever is. */
const FURTHER = [...'cdefghijklmnopqrstuvwxyz'];
