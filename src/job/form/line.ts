/** One line of a job file, taken apart as a builder sees it. */
export interface JobLine {
  /** From 1. */
  readonly number: number;
  /** How far it is moved in, and with what. */
  readonly indent: string;
  /** What stands there without indent and comment; empty for a line that says nothing. */
  readonly code: string;
  /** Brackets that stand for themselves, in the order they come, and where in the line. */
  readonly brackets: readonly { readonly sign: string; readonly at: number }[];
  /** Where a quoted text begins that does not end in this line. */
  readonly openQuote?: number;
  /** What stands behind the end of a quoted text and before the next sign, where something does. */
  readonly behindQuote?: string;
}

const OPENING = '[{';
const CLOSING = ']}';

/**
 * Takes a line apart. Quotes and brackets count only where a value may begin or within brackets: in `12"` and `a [b]`
 * they are letters like others.
 *
 * @param depth brackets that lines before left open
 */
export function lineOf(text: string, number: number, depth: number): JobLine {
  const indent = /^[\s\u00a0]*/.exec(text)![0];
  const brackets: { sign: string; at: number }[] = [];
  let [open, isStart, at] = [depth, true, indent.length];
  const rest: { openQuote?: number; behindQuote?: string } = {};
  for (; at < text.length; at++) {
    const sign = text[at]!;
    if (sign === '#' && (at === indent.length || /\s/.test(text[at - 1]!))) break;
    if (isStart && (sign === '"' || sign === "'")) {
      const end = endOfQuote(text, at, sign);
      if (end < 0) {
        rest.openQuote ??= at;
        at = text.length;
        break;
      }
      const behind = /^[^,:#\]}]*/.exec(text.slice(end + 1))![0].trim();
      if (behind !== '' && !/^\s*#/.test(text.slice(end + 1))) rest.behindQuote ??= behind;
      at = end;
      isStart = false;
      continue;
    }
    if (OPENING.includes(sign) && (isStart || open > 0)) open++;
    else if (CLOSING.includes(sign)) open = Math.max(0, open - 1);
    else {
      // Behind these a value begins; blanks change nothing.
      const next = text[at + 1];
      if (sign === ',' && open > 0) isStart = true;
      else if (
        (sign === ':' || sign === '-') &&
        (next === undefined || /\s/.test(next) || (at === indent.length && OPENING.includes(next)))
      )
        isStart = isStart || sign === ':';
      else if (!/\s/.test(sign)) isStart = false;
      continue;
    }
    brackets.push({ sign, at });
    isStart = OPENING.includes(sign);
  }
  return { number, indent, code: text.slice(indent.length, at).trimEnd(), brackets, ...rest };
}

function endOfQuote(text: string, from: number, quote: string): number {
  for (let at = from + 1; at < text.length; at++) {
    if (quote === '"' && text[at] === '\\') at++;
    else if (text[at] === quote && text[at + 1] === quote && quote === "'") at++;
    else if (text[at] === quote) return at;
  }
  return -1;
}
