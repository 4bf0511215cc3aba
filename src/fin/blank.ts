import type { FinSpec } from '../job/spec/finish.js';
import { outlineOf } from './outline.js';

/** The blank that the fin is sawn from, fin frame, mm. */
export interface BlankSize {
  /** Where it begins and ends along the base. */
  readonly from: number;
  readonly to: number;
  /** How far it stands out beyond the base line (the tab, where there is one) and beyond the tip line. */
  readonly below: number;
  readonly above: number;
  /** Along the base, and from end to end the way the grain runs: from base to tip. */
  readonly width: number;
  readonly length: number;
}

export function blankSize(fin: FinSpec): BlankSize {
  const { over, tab } = fin.build!;
  const { leading, trailing } = outlineOf(fin);
  const from = Math.min(...leading.map(([x]) => x)) - over;
  const to = Math.max(...trailing.map(([x]) => x)) + over;
  const below = tab?.depth ?? over;
  return { from, to, below, above: over, width: to - from, length: below + fin.depth + over };
}
