import { isCollection, isMap, isPair, isScalar, type Document, type Pair, type YAMLMap } from 'yaml';
import type { Path } from '../mistake/say.js';
import { bareValue, isBare, isMeant, isPlain } from '../text/bare.js';
import { documentOf, isBroken } from './document.js';
import { endOfLine, rangeOf } from './ranges.js';

/**
 * The job's text with another value at one place; every other character stays as the builder wrote it.
 *
 * @param path where the value stands; a key that is not there yet is added at the end of its block
 * @param written as a builder would write it: `3/4 in`, `19`, `follow`
 * @throws when the text is not YAML, or the path leads through something that is not a block of keys
 */
export function withValue(text: string, path: Path, written: string): string {
  // One bare value in another's place reads as it does by itself, and the whole job need not be read again for it.
  if (isPlain(documentOf(text).getIn(path, true)) && bareValue(written)) return placed(text, path, written);
  for (const scalar of spellings(written)) {
    const changed = placed(text, path, scalar);
    if (readsAs(changed, path, written)) return changed;
  }
  throw new Error(`cannot write "${written}" at ${path.join('.')}`);
}

/**
 * The job's text without a key; without a change where it is not there. The line or the place between commas goes with
 * it.
 */
export function withoutKey(text: string, path: Path): string {
  const document = documentOf(text);
  const map: unknown = document.getIn(path.slice(0, -1), true);
  const pair = isMap(map) ? pairOf(map, path.at(-1)!) : undefined;
  if (!isMap(map) || !pair) return text;
  const [from, to] = rangeOf(pair);
  if (!map.flow) return text.slice(0, text.lastIndexOf('\n', from) + 1) + text.slice(endOfLine(text, to) + 1);
  const before = text.slice(0, from).match(/,\s*$/);
  const after = text.slice(to).match(/^\s*,\s*/);
  if (before && !after) return text.slice(0, from - before[0].length) + text.slice(to);
  return text.slice(0, from) + text.slice(to + (after?.[0].length ?? 0));
}

/** What stands at a place in the job's text: a number, a text, or nothing. */
export function valueAt(document: Document, path: Path): string | number | undefined {
  const value: unknown = document.getIn(path);
  return typeof value === 'string' || typeof value === 'number' ? value : undefined;
}

/** Bare where YAML reads it as meant, else in quotes. */
function spellings(written: string): string[] {
  return isBare(written) ? [written, JSON.stringify(written)] : [JSON.stringify(written)];
}

function placed(text: string, path: Path, scalar: string): string {
  const document = documentOf(text);
  if (isBroken(text)) throw new Error('the job is not YAML');
  const node: unknown = document.getIn(path, true);
  const range = (node as { range?: readonly [number, number, number] | null } | undefined)?.range;
  if (range) {
    const gap = range[0] === range[1] && text[range[0] - 1] === ':' ? ' ' : '';
    return text.slice(0, range[0]) + gap + scalar + text.slice(range[1]);
  }
  return added(text, document, path, scalar);
}

/** Adds a key to the innermost block of its path that is there, the missing ones around it in braces. */
function added(text: string, document: Document, path: Path, scalar: string): string {
  let depth = path.length - 1;
  while (depth > 0 && !isCollection(document.getIn(path.slice(0, depth), true))) depth--;
  const map: unknown = depth === 0 ? document.contents : document.getIn(path.slice(0, depth), true);
  if (!isMap(map) || map.items.length === 0) throw new Error(`nothing to add ${path.join('.')} to`);
  const missing = path.slice(depth);
  const value = missing.slice(1).reduceRight<string>((inner, key) => `{${key}: ${inner}}`, scalar);
  const entry = `${missing[0]}: ${value}`;
  const last = map.items.at(-1)!;
  const [, end] = rangeOf(last);
  if (map.flow) return `${text.slice(0, end)}, ${entry}${text.slice(end)}`;
  const [start] = rangeOf(map.items[0]!);
  const indent = ' '.repeat(start - text.lastIndexOf('\n', start - 1) - 1);
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const at = endOfLine(text.replaceAll('\r', ' '), end);
  const head = text.slice(0, at).replace(/\r$/, '');
  return `${head}${newline}${indent}${entry}${text.slice(head.length) || newline}`;
}

function pairOf(map: YAMLMap, key: string | number): Pair | undefined {
  return map.items.find((item) => isPair(item) && isScalar(item.key) && item.key.value === key);
}

function readsAs(text: string, path: Path, written: string): boolean {
  return !isBroken(text) && isMeant(documentOf(text).getIn(path), written);
}
