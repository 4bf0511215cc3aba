import type { z } from 'zod';
import { STAND_IN } from '../quantities.js';
import type { Path } from '../mistake/say.js';
import { likeliestForm, valueAt } from '../mistake/issues.js';

/**
 * What takes the place of a value that cannot be read, tried in turn: a number or text, a block, a list, a pair,
 * nothing.
 */
const STAND_INS: readonly (() => unknown)[] = [
  () => STAND_IN,
  () => ({}),
  () => [],
  () => [STAND_IN, STAND_IN],
  () => undefined,
];
/** Each round mends one level of the file; no file lies deeper. */
const MOST_ROUNDS = 12;

/**
 * Reads `value` as far as it can be read, so that its other parts can be checked together with it: unknown keys are
 * left out, and what cannot be read is stood in for. Only to find further mistakes; a job is never made from it.
 *
 * @returns undefined where even that does not help
 */
export function readAsFarAsPossible<T>(schema: z.ZodType<T>, value: unknown): T | undefined {
  const mended: unknown = structuredClone(value);
  const tries = new Map<string, number>();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const read = schema.safeParse(mended);
    if (read.success) return read.data;
    for (const path of placesOf(read.error.issues, mended)) {
      const parent = valueAt(mended, path.slice(0, -1)) as Record<string | number, unknown> | undefined;
      const step = path.at(-1);
      const name = path.join('\n');
      const next = STAND_INS[tries.get(name) ?? 0];
      if (typeof parent !== 'object' || parent === null || step === undefined || !next) return undefined;
      tries.set(name, (tries.get(name) ?? 0) + 1);
      parent[step] = next();
      if (parent[step] === undefined) Reflect.deleteProperty(parent, step);
    }
  }
  return undefined;
}

/**
 * Removes unknown keys at once and gives the places of everything else; inside a choice of forms, the places within the
 * likeliest.
 */
function placesOf(issues: readonly z.core.$ZodIssue[], value: unknown, base: Path = []): Path[] {
  return issues.flatMap((issue): Path[] => {
    const path = [...base, ...(issue.path as Path)];
    if (issue.code === 'unrecognized_keys') {
      const block = valueAt(value, path);
      if (typeof block === 'object' && block !== null) for (const key of issue.keys) Reflect.deleteProperty(block, key);
      return [];
    }
    const form = issue.code === 'invalid_union' ? likeliestForm(issue) : undefined;
    return form ? placesOf(form, value, path) : [path];
  });
}
