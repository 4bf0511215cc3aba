import { printLength } from '../length/length.js';
import type { Units } from '../length/units.js';
import type { Plan } from '../plan.js';
import { sayNote } from './notes.js';
import { thinWalls, type ThinWall } from '../wall/prove.js';

export const WALL = { deck: 'deck skin', bottom: 'bottom skin', rail: 'rail wall' } as const;

/** Proves a finished plan once more, from its published chambers alone. */
export function proved(plan: Plan): ThinWall[] {
  return thinWalls(plan.chambers, plan.layup.rows, plan.trees, plan.board.mesh.chordError, plan.asked);
}

/** Why no papers may be made of a plan, in sentences: walls that its own proof does not find, rows that the cutter does not come through, dots in the way of the finished surface. */
export function refusalsOf(plan: Plan): string[] {
  const { units } = plan.job;
  const barred = plan.notes.filter(
    ({ kind, why }) =>
      (kind === 'rout' && why === 'reach') || (kind === 'glue' && (why === 'margin' || why === 'off-face')),
  );
  return [...proved(plan).map((wall) => sayThin(wall, units)), ...barred.map((note) => sayNote(note, units))];
}

/** `R2-07: rail wall 17.2 mm, 0.8 mm under the 18 mm asked; thinnest 1204 mm from the nose, 262 mm right of the centreline` */
export function sayThin({ chamber, patch, wall, asked, at }: ThinWall, units: Units): string {
  const [x, y] = at;
  const exact = (mm: number) => (units === 'mm' ? `${mm.toFixed(1)} mm` : `${(mm / 25.4).toFixed(3)} in`);
  const side = y < 0 ? 'left' : 'right';
  return (
    `${chamber}: ${WALL[patch]} ${exact(wall)}, ${exact(asked - wall)} under the ${exact(asked)} asked; ` +
    `thinnest ${printLength(x, units)} from the nose, ${printLength(Math.abs(y), units)} ${side} of the centreline`
  );
}
