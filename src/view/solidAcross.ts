import { stretchOf } from '../chamber/stretch.js';
import type { Plan } from '../plan.js';

/** A place along the board, and how many of the rows that run past it are solid there. */
export interface SolidAcross {
  /** From the nose, mm. */
  readonly x: number;
  readonly solid: number;
  readonly rows: number;
}

/**
 * Of all dots the place of the one where the greatest share of the rows is solid; the first of these. A row runs past a
 * place between its first chamber and its last. Undefined where no dot lies beside a chamber.
 */
export function solidAcross({ layup, chambers, glue }: Pick<Plan, 'layup' | 'chambers' | 'glue'>) {
  const runs = layup.rows.map(({ id, face: { origin, along } }) =>
    chambers
      .filter(({ row }) => row === id)
      .map(({ profile }) => {
        const { from, to } = stretchOf(profile);
        return { from: origin[0] + from * along[0], to: origin[0] + to * along[0] };
      }),
  );
  let most: SolidAcross | undefined;
  for (const { x } of glue.dots) {
    const past = runs.filter((row) => row.length > 0 && row[0]!.from < x && x < row[row.length - 1]!.to);
    const solid = past.filter((row) => !row.some(({ from, to }) => from < x && x < to)).length;
    if (past.length > 0 && solid / past.length > (most ? most.solid / most.rows : 0))
      most = { x, solid, rows: past.length };
  }
  return most;
}
