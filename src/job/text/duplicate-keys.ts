import { isMap, isScalar, isSeq, type Node } from 'yaml';

/**
 * Where in the text a key stands that its block already has. In one pass over the file; the parser's own check takes
 * the square of a block's size.
 */
export function duplicateKeys(node: unknown): number[] {
  if (isSeq(node)) return node.items.flatMap(duplicateKeys);
  if (!isMap(node)) return [];
  const known = new Set<string>();
  return node.items.flatMap(({ key, value }) => {
    const name = isScalar(key) ? String(key.value) : undefined;
    const twice = name !== undefined && known.has(name);
    if (name !== undefined) known.add(name);
    return [...(twice ? [(key as Node).range?.[0] ?? 0] : []), ...duplicateKeys(value)];
  });
}
