/** Which comes first in `3/4/2026`, where nothing else tells. */
export type DayOrder = 'day first' | 'month first' | 'unknown';

export type ReadDate =
  /** `rest` is what stands behind the date: a name. */
  | { readonly kind: 'date'; readonly at: number; readonly rest: string }
  /** Day and month can be read either way. */
  | { readonly kind: 'either way' }
  /** It looks like a date and is none. */
  | { readonly kind: 'none such' };

const TIME = String.raw`(?:(?:T|,?\s+)(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,]\d+)?)?\s*(am|pm)?\s*(z|[+-]\d\d:?\d\d)?)?`;
const YEAR_FIRST = new RegExp(String.raw`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})${TIME}(?!\d)`, 'i');
const POINTS = new RegExp(String.raw`^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4}|\d\d)${TIME}(?!\d)`, 'i');
const SLASHES = new RegExp(String.raw`^(\d{1,2})[/-](\d{1,2})[/-](\d{4}|\d\d)${TIME}(?!\d)`, 'i');
const DAY_NAMED = new RegExp(String.raw`^(\d{1,2})[ .-]+([a-z]{3})[a-z]*[ .,-]+(\d{4}|\d\d)${TIME}(?!\d)`, 'i');
const MONTH_NAMED = new RegExp(String.raw`^([a-z]{3})[a-z]*[ .]+(\d{1,2}),?\s+(\d{4})${TIME}(?!\d)`, 'i');
const SERIAL = /^(\d{5})(?:[.,](\d+))?$/;
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
/** Days since 30 December 1899, as spreadsheets count them (ISO/IEC 29500-1, 18.17.4.1): the years 2000 to 2099. */
const SERIALS = [36_526, 73_051] as const;
const SERIAL_ZERO = [1899, 11, 30] as const;
const DAY = 86_400_000;

/**
 * Day and month by numbers alone, with slashes or dashes: which of them comes first, as far as all the dates of a list
 * tell.
 */
export function dayOrder(cells: readonly string[]): DayOrder {
  const pairs = cells.flatMap((cell) => {
    const [, a, b] = SLASHES.exec(cell.trim()) ?? [];
    return a === undefined ? [] : [[Number(a), Number(b)] as const];
  });
  const [dayFirst, monthFirst] = [pairs.some(([a]) => a > 12), pairs.some(([, b]) => b > 12)];
  if (dayFirst === monthFirst) return 'unknown';
  return dayFirst ? 'day first' : 'month first';
}

/**
 * Reads a date as spreadsheets write them, by ISO 8601 or the ways of a country; nothing where a cell does not begin
 * with one. Local time where no zone is named.
 */
export function readDate(cell: string, order: DayOrder): ReadDate | undefined {
  const text = cell.trim();
  const serial = SERIAL.exec(text);
  if (serial && Number(serial[1]) >= SERIALS[0] && Number(serial[1]) < SERIALS[1]) {
    const [year, month, day] = SERIAL_ZERO;
    const share = Number(`0.${serial[2] ?? '5'}`);
    return { kind: 'date', at: new Date(year, month, day + Number(serial[1])).getTime() + share * DAY, rest: '' };
  }
  const found = (pattern: RegExp, parts: (found: readonly string[]) => readonly [string, number, string]) => {
    const match = pattern.exec(text);
    return match && dated(parts(match), match.slice(4), text.slice(match[0].length));
  };
  const slashed = SLASHES.exec(text);
  if (slashed && order === 'unknown' && slashed[1] !== slashed[2]) return { kind: 'either way' };
  return (
    found(YEAR_FIRST, ([, y, m, d]) => [y!, Number(m), d!]) ??
    found(POINTS, ([, d, m, y]) => [y!, Number(m), d!]) ??
    found(SLASHES, ([, a, b, y]) => (order === 'month first' ? [y!, Number(a), b!] : [y!, Number(b), a!])) ??
    found(DAY_NAMED, ([, d, m, y]) => [y!, MONTHS.indexOf(m!.toLowerCase()) + 1, d!]) ??
    found(MONTH_NAMED, ([, m, d, y]) => [y!, MONTHS.indexOf(m!.toLowerCase()) + 1, d!]) ??
    undefined
  );
}

function dated(
  [written, month, dayWritten]: readonly [string, number, string],
  [hour, minute, second, half, zone]: readonly (string | undefined)[],
  rest: string,
): ReadDate {
  const [year, day] = [Number(written) + (written.length === 2 ? 2000 : 0), Number(dayWritten)];
  const real = new Date(year, month - 1, day);
  if (real.getMonth() !== month - 1 || real.getDate() !== day) return { kind: 'none such' };
  // A day without a time is noon, so that it stays that day in the next zone.
  const hours =
    hour === undefined ? 12 : half ? (Number(hour) % 12) + (half.toLowerCase() === 'pm' ? 12 : 0) : Number(hour);
  const minutes = Number(minute ?? 0);
  if (hours > 23 || minutes > 59) return { kind: 'none such' };
  const parts = [year, month - 1, day, hours, minutes, Number(second ?? 0)] as const;
  const at = zone === undefined ? new Date(...parts).getTime() : Date.UTC(...parts) - offset(zone);
  return { kind: 'date', at, rest: rest.replace(/^[\s,;(]+|[\s)]+$/g, '') };
}

function offset(zone: string): number {
  if (/^z$/i.test(zone)) return 0;
  const [, sign, hours, minutes] = /^([+-])(\d\d):?(\d\d)$/.exec(zone)!;
  return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * 60_000;
}
