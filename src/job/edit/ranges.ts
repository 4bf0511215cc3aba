import { isCollection, isPair, type Pair } from 'yaml';

/** Where a key and its value begin and end. */
export function rangeOf({ key, value }: Pair): [number, number] {
  const range = (node: unknown) => (node as { range?: readonly number[] } | null)?.range;
  const start = range(key)![0]!;
  const flow = value as { items?: unknown } | null;
  return [start, flow === null ? range(key)![1]! : (lastContent(value) ?? range(key)![1]!)];
}

/**
 * Where a node's own text ends. A block's range runs on over the blank lines and comments behind it, so its last line
 * is looked for.
 */
export function lastContent(node: unknown): number | undefined {
  if (isCollection(node) && !node.flow && node.items.length > 0) {
    const last = node.items.at(-1);
    return lastContent(isPair(last) ? (last.value ?? last.key) : last);
  }
  return (node as { range?: readonly number[] } | null)?.range?.[1];
}

export function endOfLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end < 0 ? text.length : end;
}
