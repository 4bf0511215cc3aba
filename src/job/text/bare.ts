import { isScalar, parseDocument, Scalar } from 'yaml';

/** Whether a text may stand in YAML by itself, without quotes; it may still be read as something else than itself. */
export function isBare(written: string): boolean {
  return /^[\p{L}\d.+-][^,[\]{}#:\n\r]*$/u.test(written) && written === written.trim();
}

/** Whether YAML has read what was written as the text or the number it is. */
export function isMeant(value: unknown, written: string): boolean {
  return value === written || (typeof value === 'number' && written.trim() !== '' && value === Number(written));
}

/**
 * A text as the bare value that it is, wherever it stands in another's place; undefined where it needs quotes or is
 * read as something else.
 */
export function bareValue(written: string): Scalar | undefined {
  const value = isBare(written) ? parseDocument(written).contents : undefined;
  return isPlain(value) && isMeant(value.value, written) ? value : undefined;
}

/** A value without quotes, name or tag. */
export function isPlain(node: unknown): node is Scalar {
  return isScalar(node) && node.type === Scalar.PLAIN && node.anchor === undefined && node.tag === undefined;
}
