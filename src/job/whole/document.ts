import { isMap, isPair, isScalar, isSeq, type Document, type ErrorCode, type LineCounter } from 'yaml';
import type { JobFinding, FilePlace } from '../finding.js';
import { keysOfJob } from './file.js';
import { formSlips } from '../form/slips.js';
import { readingOf, type FormError, type Reading } from '../text/reading.js';
import { writePath, type Path } from '../mistake/say.js';
import { troubleWithText } from '../text/trouble-with-text.js';

/** How deep blocks may lie in each other in brackets; a job needs five. */
const DEEPEST = 100;
/** How often `*names` may be filled in, so that a small file cannot grow without end. */
const MOST_ALIASES = 100;
/** Mistakes of form reported at once; what follows the first few is mostly their echo. */
const MOST_FORM_FINDINGS = 10;

/** A job's text as plain values, with the places they came from. */
export interface JobDocument {
  readonly value: unknown;
  /** Where a value stands; of a key that is missing, where the block it should be in begins. */
  placeOf(path: Path): FilePlace;
  /** Where the key itself stands, for keys that should not be there. */
  placeOfKey(path: Path): FilePlace;
}

/**
 * Reads YAML (1.2) or JSON. Gives no document when the form is broken; the findings say where.
 *
 * @param before as `readingOf` takes it
 */
export function readDocument(
  text: string,
  file: string,
  before?: Reading,
): { document?: JobDocument; reading?: Reading; findings: JobFinding[] } {
  const whole = (what: string, remedy: string, line?: number): { findings: JobFinding[] } => ({
    findings: [{ severity: 'error', where: { file, path: '', ...(line !== undefined && { line }) }, what, remedy }],
  });
  const trouble = troubleWithText(text, 'a job file');
  if (trouble) return whole(trouble.what, trouble.remedy, trouble.line);
  if (bracketDepth(text) > DEEPEST) return whole(...TANGLED);
  if (text.trim() === '') return whole('the file is empty', 'begin with a starter job: chamberwright new FILE');

  try {
    const reading = readingOf(text, before);
    const { document: parsed, lines, broken } = reading;
    if (broken.length > 0) return { findings: formFindings(broken, text, lines, file) };
    const value: unknown = parsed.toJS({ maxAliasCount: MOST_ALIASES });
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      return whole(
        'this is not a job: a block of keys is expected (job:, units:, board: …)',
        'begin with a starter job: chamberwright new FILE',
        1,
      );
    }
    return { document: documentOf(parsed, value, lines, file), reading, findings: [] };
  } catch (error) {
    if (error instanceof ReferenceError && /unresolved/i.test(error.message)) return whole(...FORM.BAD_ALIAS!);
    // The parser throws where names are filled in too often or blocks lie too deep in each other for the stack.
    if (!(error instanceof ReferenceError || error instanceof RangeError)) throw error;
    return whole(...TANGLED);
  }
}

const TANGLED = [
  'the file is too tangled to be a job: names filled in too often, or blocks too deep in each other',
  'write the values out',
] as const;

/** How many brackets are open at once, at most; those within quotes count too, which does no harm. */
function bracketDepth(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (const [bracket] of text.matchAll(/[[\]{}]/g)) {
    depth = Math.max(0, depth + (bracket === '[' || bracket === '{' ? 1 : -1));
    deepest = Math.max(deepest, depth);
  }
  return deepest;
}

function documentOf(parsed: Document, value: unknown, lines: LineCounter, file: string): JobDocument {
  const place = (offset: number | undefined, path: Path): FilePlace => {
    if (offset === undefined) return { file, line: 1, column: 1, path: writePath(path) };
    const { line, col } = lines.linePos(offset);
    return { file, line, column: col, path: writePath(path) };
  };
  return {
    value,
    placeOf: (path) => place(offsetOf(parsed, path), path),
    placeOfKey: (path) => place(keyOffset(parsed, path) ?? offsetOf(parsed, path), path),
  };
}

/** Where the value at `path` begins, or else what it should be in. */
function offsetOf(parsed: Document, path: Path): number | undefined {
  for (let depth = path.length; depth >= 0; depth--) {
    const here = path.slice(0, depth);
    const node: unknown = depth === 0 ? parsed.contents : parsed.getIn(here, true);
    const range = (node as { range?: readonly number[] | null } | undefined)?.range;
    if (!range) continue;
    const block = isMap(node) || isSeq(node);
    return (block ? keyOffset(parsed, here) : undefined) ?? range[0];
  }
  return undefined;
}

function keyOffset(parsed: Document, path: Path): number | undefined {
  if (path.length === 0) return undefined;
  const parent: unknown = path.length === 1 ? parsed.contents : parsed.getIn(path.slice(0, -1), true);
  if (!isMap(parent)) return undefined;
  const pair = parent.items.find(
    (item) => isPair(item) && isScalar(item.key) && String(item.key.value) === path.at(-1),
  );
  return (pair?.key as { range?: readonly number[] } | undefined)?.range?.[0];
}

/** What the parser's complaints mean to someone who did not know that the file is called YAML. */
const FORM: Partial<Record<ErrorCode, readonly [what: string, remedy: string]>> = {
  DUPLICATE_KEY: ['this key is there twice in the same block', 'keep one of them'],
  TAB_AS_INDENT: ['a tab stands where a line is moved in', 'spaces, never tabs'],
  BAD_INDENT: ['this line is not moved in as its neighbours are', 'the same number of spaces for all keys of a block'],
  BAD_ALIAS: [
    'a * here fills in a name that nothing has',
    'write the value out; a text that begins with * goes in quotes',
  ],
  MULTIPLE_DOCS: ['a line --- begins a second file', 'one job a file'],
  MISSING_CHAR: ['something that was opened here is not closed', 'a closing quote, ], } or a comma'],
  BLOCK_AS_IMPLICIT_KEY: ['two keys stand in one line', 'one key a line, or {key: value, key: value}'],
  RESOURCE_EXHAUSTION: TANGLED,
  MULTILINE_IMPLICIT_KEY: ['a key runs over more than one line; perhaps its colon is missing', 'key: value'],
};

/**
 * What is wrong with the form of a file, in a builder's words; where no slip of the hand is found, the first place at
 * which the parser stumbled.
 */
function formFindings(errors: readonly FormError[], text: string, lines: LineCounter, file: string): JobFinding[] {
  const twice = errors.filter(({ code }) => code === 'DUPLICATE_KEY');
  const others = errors.filter(({ code }) => code !== 'DUPLICATE_KEY');
  const stumbled = others.length > 0 ? lines.linePos(others[0]!.offset).line : 0;
  const isJson = /^\s*[{[]/.test(text);
  const slips = others.length === 0 || isJson ? [] : formSlips(text, keysOfJob());
  const isFound = slips.some(({ line }) => line <= stumbled + 1);
  const findings = [
    ...twice.map((error) => formFinding(error, lines, file)),
    ...(isFound ? [] : others.slice(0, 1).map((error) => formFinding(error, lines, file))),
    ...slips.map(({ line, column, what, remedy }): JobFinding => ({
      severity: 'error',
      where: { file, line, column, path: '' },
      what,
      remedy,
    })),
  ];
  const more = findings.length - MOST_FORM_FINDINGS;
  if (more <= 0) return findings;
  const rest = { what: `${more} more lines like these cannot be read`, remedy: 'mend the first ones and read again' };
  return [...findings.slice(0, MOST_FORM_FINDINGS), { severity: 'error', where: { file, path: '' }, ...rest }];
}

function formFinding({ code, offset }: FormError, lines: LineCounter, file: string): JobFinding {
  const { line, col } = lines.linePos(offset);
  const [what, remedy] = FORM[code] ?? UNREAD;
  return { severity: 'error', where: { file, line, column: col, path: '' }, what, remedy };
}

/** Where nothing better is known. */
const UNREAD = ['this line cannot be read', 'key: value; a text with signs in it goes in quotes'] as const;
