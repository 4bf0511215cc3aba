import words from '../../templates/proof.json' with { type: 'json' };
import type { Finding } from '../finding/finding.js';
import { printLength } from '../length/length.js';
import { MM_PER_INCH, type Units } from '../length/units.js';
import type { ThinWall } from '../proof/thinWalls.js';
import { say } from '../words/say.js';

export const WALL = words.wall;

/**
 * As in `R2-07: rail wall 17.2 mm, 0.8 mm under the 18 mm asked; thinnest 1204 mm from the nose, 262 mm right of …`
 */
export function thinFinding({ chamber, patch, wall, asked, at }: ThinWall, units: Units): Finding {
  const [x, y] = at;
  const values = {
    wall: WALL[patch],
    has: sayExactly(wall, units),
    short: sayExactly(asked - wall, units),
    needs: sayExactly(asked, units),
    along: printLength(x, units),
    across: printLength(Math.abs(y), units),
    side: y < 0 ? words.left : words.right,
    anew: words.anew,
  };
  return { where: chamber, what: say(words.thin.what, values), remedy: say(words.thin.remedy, values) };
}

/** What is there and what is missing, finer than the rule: `0.8 mm`, `0.031 in`. */
export function sayExactly(mm: number, units: Units): string {
  return units === 'mm' ? `${mm.toFixed(1)} mm` : `${(mm / MM_PER_INCH).toFixed(3)} in`;
}
