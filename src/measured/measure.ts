/** One thing that was measured, as it was written down: the keys and values that the job has for it. */
export interface Measure {
  readonly list: 'shaped' | 'weighings';
  /** In the order in which they are written; texts as typed: `at: 24 in`, `thickness: 3 1/16 in`. */
  readonly item: readonly (readonly [key: string, written: string])[];
}

/** What a caliper or a scale gives. */
export const VALUES = ['thickness', 'width', 'deck', 'bottom', 'rail', 'weight'] as const;

/** The key of what was measured, and what came out. */
export function valueOf({ item }: Measure): readonly [key: string, written: string] {
  return item.find(([key]) => (VALUES as readonly string[]).includes(key))!;
}

/** A measure as it stands in a job: `{at: 24 in, thickness: 3 1/16 in}`. */
export function sayMeasure({ item }: Measure): string {
  return `{${item.map(([key, written]) => `${key}: ${written}`).join(', ')}}`;
}
