/** Whether a text may stand in YAML by itself, without quotes; it may still be read as something else than itself. */
export function isBare(written: string): boolean {
  return /^[\p{L}\d.+-][^,[\]{}#:\n\r]*$/u.test(written) && written === written.trim();
}

/** Whether YAML has read what was written as the text or the number it is. */
export function isMeant(value: unknown, written: string): boolean {
  return value === written || (typeof value === 'number' && written.trim() !== '' && value === Number(written));
}
