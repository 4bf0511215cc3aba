import { isMap, isScalar, isSeq, type YAMLSeq } from 'yaml';
import type { Path } from '../mistake/say.js';
import { isBare, isMeant } from '../text/bare.js';
import { documentOf, isBroken } from './document.js';
import { endOfLine, lastContent, rangeOf } from './ranges.js';

/**
 * The job's text with one more thing at the end of a list, written as the last one is; every other character stays as
 * the builder wrote it.
 *
 * @param path of a list with something in it
 */
export function withItemCopied(text: string, path: Path): string {
  const list = listAt(text, path);
  const { start, from, to } = placeOf(text, list, list.items.length - 1);
  if (list.flow) return `${text.slice(0, to)}, ${text.slice(from, to)}${text.slice(to)}`;
  const end = endOfLine(text, to);
  const newline = text[end - 1] === '\r' ? '\r\n' : '\n';
  const at = end - (newline.length - 1);
  return text.slice(0, at) + newline + text.slice(start, to) + text.slice(at);
}

/**
 * The job's text with one more thing at the end of one of its lists, all on one line in braces; every other character
 * stays as the builder wrote it. A list that is not there yet is begun at the end of the file.
 *
 * @param key of the list, at the top of the file
 * @param item its keys, and their values as a builder would write them
 * @throws when the text is no job, or what it came to does not read as meant
 */
export function withItemAdded(text: string, key: string, item: readonly ItemEntry[]): string {
  const before = lengthOf(text, key);
  for (const isQuoted of [false, true]) {
    const changed = added(text, key, item, isQuoted);
    const list: unknown = isBroken(changed) ? undefined : documentOf(changed).getIn([key]);
    const last = isSeq(list) && list.items.length === before + 1 ? list.items.at(-1) : undefined;
    if (isMap(last) && item.every(([name, written]) => isMeant(last.get(name), written))) return changed;
  }
  throw new Error(`cannot add to ${key}`);
}

type ItemEntry = readonly [key: string, written: string];

const lengthOf = (text: string, key: string): number => {
  const list: unknown = documentOf(text).getIn([key]);
  return isSeq(list) ? list.items.length : 0;
};

function added(text: string, key: string, item: readonly ItemEntry[], isQuoted: boolean): string {
  const root = documentOf(text).contents;
  if (!isMap(root) || root.items.length === 0) throw new Error('the job is not a block of keys');
  const spelt = (written: string) => (isQuoted || !isBare(written) ? JSON.stringify(written) : written);
  // Within braces all around it is JSON, where every word has its quotes.
  const entry = root.flow
    ? JSON.stringify(Object.fromEntries(item))
    : `{${item.map(([name, written]) => `${name}: ${spelt(written)}`).join(', ')}}`;
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const pair = root.items.find((each) => isScalar(each.key) && each.key.value === key);
  if (!pair) {
    if (root.flow) {
      const [, end] = rangeOf(root.items.at(-1)!);
      return `${text.slice(0, end)}, ${JSON.stringify(key)}: [${entry}]${text.slice(end)}`;
    }
    const [start] = rangeOf(root.items[0]!);
    const indent = ' '.repeat(start - text.lastIndexOf('\n', start - 1) - 1);
    const end = text.endsWith('\n') ? '' : newline;
    return `${text}${end}${newline}${indent}${key}:${newline}${indent}  - ${entry}${newline}`;
  }
  const list: unknown = pair.value;
  if (isSeq(list) && list.items.length > 0) {
    const { start, from, to } = placeOf(text, list, list.items.length - 1);
    if (list.flow) return `${text.slice(0, to)}, ${entry}${text.slice(to)}`;
    const at = endOfLine(text, to) - (text[endOfLine(text, to) - 1] === '\r' ? 1 : 0);
    return `${text.slice(0, at)}${newline}${text.slice(start, from)}${entry}${text.slice(at)}`;
  }
  if (!isSeq(list) && !(isScalar(list) && list.value === null)) throw new Error(`${key} is no list`);
  // Nothing is in it: `[]`, `null`, or nothing at all after its key.
  const [from, to] = list.range!;
  const gap = text[from - 1] === ':' ? ' ' : '';
  return `${text.slice(0, from)}${gap}[${entry}]${text.slice(to)}`;
}

/**
 * The job's text without one thing of a list: its lines, or its place between commas, go with it. The last one leaves
 * an empty list.
 *
 * @param path of the thing: the list's, and its number
 */
export function withoutItem(text: string, path: Path): string {
  const list = listAt(text, path.slice(0, -1));
  const i = path.at(-1) as number;
  if (list.items.length === 1)
    return text.slice(0, list.range![0]) + '[]' + text.slice(lastContent(list) ?? list.range![1]);
  const { start, from, to } = placeOf(text, list, i);
  if (!list.flow) return text.slice(0, start) + text.slice(endOfLine(text, to) + 1);
  const after = text.slice(to).match(/^\s*,\s*/);
  if (after) return text.slice(0, from) + text.slice(to + after[0].length);
  const before = text.slice(0, from).match(/,\s*$/)!;
  return text.slice(0, from - before[0].length) + text.slice(to);
}

function listAt(text: string, path: Path): YAMLSeq {
  const node: unknown = documentOf(text).getIn(path, true);
  if (!isSeq(node) || node.items.length === 0) throw new Error(`there is no list at ${path.join('.')}`);
  return node;
}

/** Where an item begins and ends; in a block, also where the line of its dash begins. */
function placeOf(text: string, list: YAMLSeq, i: number): { start: number; from: number; to: number } {
  const item = list.items[i] as { range: readonly [number, number, number] };
  const [from] = item.range;
  return { start: text.lastIndexOf('\n', from - 1) + 1, from, to: lastContent(item) ?? item.range[1] };
}
