import { printLength } from '../length/length.js';
import { MM_PER_INCH, type Units } from '../length/units.js';
import type { ThinWall } from '../proof/thinWalls.js';

export const WALL = { deck: 'deck skin', bottom: 'bottom skin', rail: 'rail wall' } as const;

/**
 * As in `R2-07: rail wall 17.2 mm, 0.8 mm under the 18 mm asked; thinnest 1204 mm from the nose, 262 mm right of …`
 */
export function sayThin({ chamber, patch, wall, asked, at }: ThinWall, units: Units): string {
  const [x, y] = at;
  const exact = (mm: number) => sayExactly(mm, units);
  const side = y < 0 ? 'left' : 'right';
  return (
    `${chamber}: ${WALL[patch]} ${exact(wall)}, ${exact(asked - wall)} under the ${exact(asked)} asked; ` +
    `thinnest ${printLength(x, units)} from the nose, ${printLength(Math.abs(y), units)} ${side} of the centreline`
  );
}

/** What is there and what is missing, finer than the rule: `0.8 mm`, `0.031 in`. */
export function sayExactly(mm: number, units: Units): string {
  return units === 'mm' ? `${mm.toFixed(1)} mm` : `${(mm / MM_PER_INCH).toFixed(3)} in`;
}
