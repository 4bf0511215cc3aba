import type { JobLine } from './line.js';
import type { Said } from './said.js';

const CLOSED_BY: Readonly<Record<string, string>> = { '[': ']', '{': '}' };

/**
 * A bracket that is missing, or is another one, in a line.
 *
 * @param isWithin whether brackets are open from lines before
 * @param next the next line that says something: whether what is open goes on there
 */
export function bracketSlip({ code, indent, brackets }: JobLine, isWithin: boolean, next: string | undefined): Said {
  const open: string[] = [];
  for (const { sign } of brackets) {
    const closes = CLOSED_BY[sign];
    if (closes !== undefined) open.push(closes);
    else if (open.at(-1) === sign) open.pop();
    else if (open.length > 0)
      return {
        what: `"${sign}" stands where "${open.at(-1)}" belongs`,
        remedy: 'each bracket closed by its own kind: [ ], { }',
      };
    else if (!isWithin) return { what: `"${sign}" closes what nothing opened`, remedy: missingBefore(code, sign) };
  }
  if (open.length === 0 || goesOn(indent, next)) return undefined;
  const missing = [...open].reverse().join('');
  return {
    what: `what is opened in this line is not closed: "${missing}" is missing`,
    remedy: `${shortened(code)}${missing}`,
  };
}

function missingBefore(code: string, sign: string): string {
  const opening = sign === ']' ? '[' : '{';
  if (code.includes(opening)) return `no "${sign}" there`;
  const [, dash = '', item = code] = /^(-\s+)?(.*)$/.exec(code) ?? [];
  // Behind a key stands what it holds; a member of a list begins with its first key.
  const key = dash === '' || sign === ']' ? (/^[\w-]+:\s+/.exec(item)?.[0] ?? '') : '';
  return `${dash}${key}${opening}${shortened(item.slice(key.length))}`;
}

/** Whether a line goes on with what is open before it: further in, and not another entry. */
function goesOn(indent: string, next: string | undefined): boolean {
  if (next === undefined) return false;
  const deeper = /^\s*/.exec(next)![0].length > indent.length;
  return deeper || /^\s*[\]},]/.test(next);
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 25)} … ${text.slice(-25)}` : text;
}
