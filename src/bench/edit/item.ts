import { isSeq, type YAMLSeq } from 'yaml';
import type { Path } from '../../job/mistake/say.js';
import { documentOf } from './document.js';
import { endOfLine, lastContent } from './ranges.js';

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
