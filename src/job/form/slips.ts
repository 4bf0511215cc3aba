import { nearest } from '../mistake/nearest.js';
import { bracketSlip } from './brackets.js';
import { lineOf, type JobLine } from './line.js';
import type { Said, Sentence } from './said.js';

/** A slip of the hand in how a job file is written, as a builder would be told of it. */
export interface FormSlip extends Sentence {
  readonly line: number;
  /** From 1. */
  readonly column: number;
}

/** The keys of a job: those at the left edge, and all. */
export interface KnownKeys {
  readonly top: readonly string[];
  readonly all: readonly string[];
}

/**
 * Looks through the lines of a file whose form is broken for the slips of the hand that break it, so that line and
 * remedy are the builder's and not the parser's. One a line, those that follow from it left out.
 */
export function formSlips(text: string, keys: KnownKeys): FormSlip[] {
  const slips: FormSlip[] = [];
  const blocks: Block[] = [];
  const written = text.replace(/^\uFEFF/, '').split(/\r\n|\n/);
  let opensBlock = true;
  let depth = 0;
  for (const [i, each] of written.entries()) {
    const line = lineOf(each, i + 1, depth);
    if (line.code === '' || /^(---|\.\.\.|%)/.test(each)) continue;
    const isWithin = depth > 0;
    const next = written.slice(i + 1).find((other) => /^\s*[^\s#]/.test(other));
    const bracket = bracketSlip(line, isWithin, next);
    depth = bracket
      ? 0
      : Math.max(0, depth + line.brackets.reduce((sum, { sign }) => sum + ('[{'.includes(sign) ? 1 : -1), 0));
    const moved: Said = isWithin ? undefined : indentSlip(line, blocks, opensBlock, keys);
    const slip: Said = bracket ?? quoteSlip(line) ?? moved ?? (isWithin ? undefined : keySlip(line, keys));
    if (slip) slips.push({ line: line.number, column: slip === moved ? 1 : line.indent.length + 1, ...slip });
    // What follows a slip is not held against it.
    if (!isWithin) opensBlock = slip !== undefined || /:$/.test(line.code) || /^-\s*$/.test(line.code);
  }
  return slips;
}

function quoteSlip({ code, openQuote, behindQuote }: JobLine): Said {
  if (openQuote !== undefined)
    return {
      what: 'a quote is opened in this line and not closed',
      remedy: 'the same quote at the end of the text, or none at all',
    };
  if (behindQuote === undefined || /^[^:]*["'][^"']*["']\s*:/.test(code)) return undefined;
  return {
    what: `"${behindQuote.slice(0, 20)}" stands behind the end of a text in quotes`,
    remedy: `lengths need no quotes: 11' 4 1/2"; a text in quotes ends where its quote does`,
  };
}

/** How far the lines of an open block are moved in. */
interface Block {
  readonly indent: number;
}

function indentSlip(line: JobLine, blocks: Block[], opensBlock: boolean, keys: KnownKeys): Said {
  const { indent, code } = line;
  if (indent.includes('\t')) return { what: 'a tab stands where a line is moved in', remedy: 'spaces, never tabs' };
  if (/[^ ]/.test(indent))
    return {
      what: 'a special blank, as web pages and word processors have them, stands where a line is moved in',
      remedy: 'spaces; retype the beginning of the line',
    };
  const here = indent.length;
  const last = blocks.at(-1)?.indent ?? -1;
  if (here > last) {
    if (opensBlock || last < 0) blocks.push({ indent: here });
    else if (isBlockLine(code)) return movedIn(last);
  } else {
    while (blocks.length > 1 && blocks.at(-1)!.indent > here) blocks.pop();
    const open = blocks.at(-1)!.indent;
    if (open !== here) return movedIn(nearer(here, open, last));
  }
  const key = /^([\p{L}\w-]+):(\s|$)/u.exec(code)?.[1];
  if (here === 0 && key !== undefined && !keys.top.includes(key) && keys.all.includes(key) && !nearest(key, keys.top))
    return {
      what: `"${key}" belongs to a block and is not moved in`,
      remedy: 'as many spaces before it as its neighbours have',
    };
  // A line that begins with a dash opens a block for the keys behind it.
  const dash = /^(-\s+)[\p{L}\w-]+:(\s|$)/u.exec(code)?.[1];
  if (dash) blocks.push({ indent: here + dash.length });
  return undefined;
}

function nearer(here: number, a: number, b: number): number {
  return Math.abs(here - a) < Math.abs(here - b) ? a : b;
}

function movedIn(spaces: number): Said {
  return {
    what: 'this line is not moved in as its neighbours are',
    remedy:
      spaces === 0
        ? 'no space before it'
        : `${spaces} ${spaces === 1 ? 'space' : 'spaces'} before it, as for all keys of a block`,
  };
}

function isBlockLine(code: string): boolean {
  return /^-(\s|$)/.test(code) || /^[\p{L}\w-]+\s*:(\s|$)/u.test(code);
}

const WORD = '[\\p{L}_][\\p{L}\\w-]*';

function keySlip({ code }: JobLine, keys: KnownKeys): Said {
  if (/^(\/\/|\/\*|--|;|%|\*)/.test(code))
    return {
      what: 'this is no key; perhaps it is meant for people only',
      remedy: 'a # before what is not to be read',
    };
  const dashed = /^-(?=[{[\p{L}])/u.exec(code);
  if (dashed) return { what: 'a space is missing behind the dash', remedy: `- ${shortened(code.slice(1))}` };
  const item = code.replace(/^(-\s+)+/, '');
  if (/^[{[]/.test(item))
    return code === item ? { what: 'an entry is written without its dash', remedy: `- ${shortened(item)}` } : undefined;
  if (/^[“”„‘’«»]/.test(item))
    return { what: 'curly quotes stand around a key', remedy: 'no quotes, or straight ones' };
  const quoted = /^["'][^"']*["']\s*:/.test(item);
  const [, key, sign = '', rest = ''] = new RegExp(`^(${WORD})\\s*(:(?!\\S)|:|=|;|,|)\\s*(.*)$`, 'u').exec(item) ?? [];
  if (quoted || (code !== item && !keys.all.includes(key ?? ''))) return undefined;
  if (key === undefined)
    return { what: 'this line begins with no key', remedy: 'key: value; what is meant for people goes behind a #' };
  const right = `${keys.all.includes(key) ? key : (nearest(key, keys.all) ?? key)}: ${shortened(rest)}`.trim();
  if (sign === ':') {
    if (rest !== '' && new RegExp(`^${WORD}:\\S`, 'u').test(item))
      return { what: `a space is missing behind the colon of "${key}"`, remedy: right };
    return valueSlip(rest, key, keys);
  }
  if (sign !== '') return { what: `"${sign}" stands behind "${key}" where a colon belongs`, remedy: right };
  if (/^[“”"]/.test(rest) || keys.all.includes(key) || nearest(key, keys.all))
    return { what: `the colon behind "${key}" is missing`, remedy: right };
  return { what: `this line has no colon`, remedy: 'key: value; what is meant for people goes behind a #' };
}

function valueSlip(value: string, key: string, keys: KnownKeys): Said {
  if (/^[@`%&*!|>]/.test(value))
    return {
      what: `a value cannot begin with "${value[0]}"`,
      remedy: value[0] === '%' ? 'the number first: 50 %' : `leave the "${value[0]}" out, or put a text in quotes`,
    };
  const second = new RegExp(`(?:^|\\s)(${WORD}):(\\s|$)`, 'u').exec(value.replace(/^[[{"'].*/, ''));
  if (!second) return undefined;
  if (keys.all.includes(second[1]!))
    return {
      what: `two keys stand in one line, "${key}" and "${second[1]}"`,
      remedy: 'one key a line, or in brackets: {key: value, key: value}',
    };
  return {
    what: `a second colon stands in the value of "${key}"`,
    remedy: `the text in quotes: ${key}: "${shortened(value)}"`,
  };
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
