import { LineCounter, parseDocument, visit, type Document, type ErrorCode, type Node, type Scalar } from 'yaml';
import { bareValue, isBare, isPlain } from './bare.js';
import { duplicateKeys } from './duplicate-keys.js';

/** A job's text as YAML (1.2) or JSON. */
export interface Reading {
  text: string;
  readonly document: Document.Parsed;
  readonly lines: LineCounter;
  /** Why it is none, and where in the text. */
  readonly broken: readonly FormError[];
}

export interface FormError {
  readonly code: ErrorCode;
  readonly offset: number;
}

/**
 * Reads a job's text.
 *
 * @param before what was read before. Where the text differs from it in one bare value only, as while a slider is
 *   dragged, that value is exchanged
 *   in it, which takes a tenth of the time: it becomes what is given back.
 * @throws what the parser throws: `RangeError` where blocks lie too deep in each other for the stack
 */
export function readingOf(text: string, before?: Reading): Reading {
  if (before && (before.text === text || exchanged(before, text))) return before;
  const lines = new LineCounter();
  // The parser's own search for keys that are there twice takes the square of a block's size.
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    logLevel: 'error',
    uniqueKeys: false,
  });
  const broken = document.errors.map(({ code, pos }) => ({ code, offset: pos[0] }));
  const twice = duplicateKeys(document.contents).map((offset) => ({
    code: 'DUPLICATE_KEY' as const,
    offset,
  }));
  return { text, document, lines, broken: [...broken, ...twice] };
}

/** Makes a reading the one of another text where only one bare value has become another; says whether it could. */
function exchanged(reading: Reading, text: string): boolean {
  const { document, lines, broken } = reading;
  if (broken.length > 0 || document.directives?.yaml.explicit) return false;
  const more = text.length - reading.text.length;
  const from = sameFromStart(reading.text, text);
  const to = reading.text.length - sameFromEnd(reading.text, text, from);
  const old = bareAround(reading, from, to);
  if (!old) return false;
  const written = text.slice(old.range![0], old.range![1] + more);
  const value = bareValue(written);
  if (!value) return false;

  value.range = old.range!;
  const end = old.range![1];
  const shifted = (offset: number) => (offset >= end ? offset + more : offset);
  visit(document, {
    Node: (_, node) => {
      // What is put in its place is visited next.
      if (node === old) return value;
      if (node.range) node.range = node.range.map(shifted) as unknown as Node['range'];
      return undefined;
    },
  });
  document.range = document.range.map(shifted) as unknown as typeof document.range;
  lines.lineStarts = lines.lineStarts.map(shifted);
  reading.text = text;
  return true;
}

/** The bare value that holds a stretch of the text. */
function bareAround({ document, text }: Reading, from: number, to: number): Scalar | undefined {
  let found: Scalar | undefined;
  visit(document, {
    Scalar: (key, node) => {
      const [start, end] = node.range ?? [Infinity, 0];
      if (start > from || end < to || key === 'key' || !isPlain(node)) return undefined;
      if (isBare(text.slice(start, end))) found = node;
      return visit.BREAK;
    },
  });
  return found;
}

function sameFromStart(a: string, b: string): number {
  let count = 0;
  while (count < a.length && count < b.length && a[count] === b[count]) count++;
  return count;
}

/** How many last characters are the same, none of the first `taken` among them. */
function sameFromEnd(a: string, b: string, taken: number): number {
  const most = Math.min(a.length, b.length) - taken;
  let count = 0;
  while (count < most && a[a.length - 1 - count] === b[b.length - 1 - count]) count++;
  return count;
}
