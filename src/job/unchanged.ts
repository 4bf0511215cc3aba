import type { Job } from './job.js';

/**
 * A job whose parts are the very objects of an earlier one wherever they say the same; the earlier one itself where all
 * of them do. What was made of such a part is known by it.
 */
export function unchangedAs(before: Job, job: Job): Job {
  const parts = Object.entries(job).map(([key, part]): [string, unknown] => {
    const earlier = before[key as keyof Job];
    return [key, saysTheSame(part, earlier) ? earlier : part];
  });
  const isSame =
    parts.length === Object.keys(before).length && parts.every(([key, part]) => part === before[key as keyof Job]);
  return isSame ? before : (Object.fromEntries(parts) as unknown as Job);
}

/** Whether two values of plain data are alike to the last figure. */
function saysTheSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return false;
  if (ArrayBuffer.isView(a))
    return a.constructor === b.constructor && isSameList(a as ListOfNumbers, b as ListOfNumbers);
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => key in b && saysTheSame(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
}

type ListOfNumbers = ArrayBufferView & ArrayLike<number>;

function isSameList(a: ListOfNumbers, b: ListOfNumbers): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
