/** A sum of variables, each by its name with its factor. */
export type Sum = ReadonlyMap<string, number>;

export interface Row {
  readonly sum: Sum;
  readonly is: '=' | '<=' | '>=';
  readonly to: number;
}

interface Solver {
  solve(problem: string, options?: object): { Status: string; ObjectiveValue: number };
}

/** Its own types would ask for a DOM that the tests do not have. */
const NAME: string = 'highs';
let solver: Solver | undefined;

/**
 * The least that a sum can be in whole numbers from 0 to 1 for the variables named, and 0 or more for all others, by
 * the general-purpose solver HiGHS; undefined where nothing keeps all rows.
 */
export async function leastOf(sum: Sum, rows: readonly Row[], whole: readonly string[]): Promise<number | undefined> {
  solver ??= await ((await import(NAME)) as { default: () => Promise<Solver> }).default();
  const written = (terms: Sum) =>
    [...terms].map(([name, factor]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`).join(' ') || '0 none';
  const problem = [
    'Minimize',
    ` obj: ${written(sum)}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${written(row.sum)} ${row.is} ${row.to}`),
    'Binary',
    ` ${whole.join(' ')}`,
    'End',
  ].join('\n');
  const { Status, ObjectiveValue } = solver.solve(problem, { mip_rel_gap: 0, mip_abs_gap: 1e-6 });
  return Status === 'Optimal' ? ObjectiveValue : undefined;
}
