/** A number padded with zeros to as many digits as the largest, at least two, so that sheets sort as they lie. */
export const padded = (n: number, largest: number): string =>
  String(n).padStart(Math.max(2, String(largest).length), '0');
