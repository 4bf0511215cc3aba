import type { z } from 'zod';
import { nearest } from './nearest.js';
import { inWords, MISSING } from '../quantities.js';
import type { Path } from './say.js';
import { slipInKey } from './slip-in-key.js';

/** A mistake of shape: a key, a value or a type that the schema does not know. */
export interface Mistake {
  readonly path: Path;
  readonly what: string;
  readonly remedy: string;
  /** Whether it is about the key rather than its value. */
  readonly unknownKey?: true;
  /** The known key that an unknown one most likely meant. */
  readonly meant?: string | undefined;
}

type Issue = z.core.$ZodIssue;
type JsonSchema = z.core.JSONSchema.BaseSchema;

/**
 * What a schema's issues mean to a builder.
 *
 * @param value what was checked
 * @param schema the schema as JSON Schema, for the names and descriptions of keys
 */
export function mistakesOf(issues: readonly Issue[], value: unknown, schema: JsonSchema): Mistake[] {
  const mistakes = issues.flatMap((issue) => mistakesOfOne(issue, [], value, schema));
  // A key that is missing because it was misspelt is one mistake, not two.
  const meant = new Set(mistakes.map(({ path, meant }) => meant && [...path.slice(0, -1), meant].join('\n')));
  return mistakes.filter(({ path, what }) => !(what.endsWith(MISSING) && meant.has(path.join('\n'))));
}

function mistakesOfOne(issue: Issue, base: Path, value: unknown, schema: JsonSchema): Mistake[] {
  const path = [...base, ...(issue.path as Path)];
  const key = path.at(-1) ?? 'the file';
  const written = valueAt(value, path);
  const missing = {
    path,
    what: `"${key}" ${MISSING}`,
    remedy: `add it: ${descriptionAt(schema, path) ?? 'it is needed here'}`,
  };
  switch (issue.code) {
    case 'custom':
      if (issue.message === MISSING) return [missing];
      return [{ path, what: issue.message, remedy: String(issue.params?.remedy ?? '') }];
    case 'unrecognized_keys':
      return issue.keys.map((unknown) => unknownKey([...path, unknown], keysAt(schema, path), keysWithin(schema)));
    case 'invalid_value':
      if (written === undefined) return [missing];
      return [{ path, what: inWords(written), remedy: oneOf(written, issue.values.map(String)) }];
    case 'invalid_union':
      if (written === undefined) return [missing];
      return mistakesOfForms(issue, path, written, value, schema);
    case 'invalid_type':
      if (written === undefined) return [missing];
      if (issue.expected === 'tuple' && typeof written === 'string') return [{ path, ...pairWithoutBrackets(written) }];
      return [{ path, what: inWords(written), remedy: expected(issue.expected, keysAt(schema, path)) }];
    default: {
      const [what, remedy] = issue.message.split('|');
      if (remedy !== undefined) return [{ path, what: what!, remedy }];
      if ((issue.code === 'too_small' || issue.code === 'too_big') && issue.origin === 'array')
        return [{ path, ...listOfAnotherSize(written, isPair(schema, path)) }];
      return [{ path, what: inWords(written), remedy: descriptionAt(schema, path) ?? 'another value' }];
    }
  }
}

const PAIR = 'a pair in brackets: [12 in, 6 in]';

const EXPECTED: Readonly<Record<string, string>> = {
  object: 'a block of keys',
  record: 'a block of keys',
  array: 'a list: one line a member, each begun with "- "',
  tuple: PAIR,
  string: 'a text; one that looks like a number goes in quotes',
  number: 'a number alone, like 4 or 2.5',
  int: 'a whole number, like 4',
  boolean: 'true or false',
};

function expected(kind: string, keys: readonly string[]): string {
  const named = kind === 'object' && keys.length > 0 ? `: ${keys.join(', ')}` : '';
  return `${EXPECTED[kind] ?? 'another kind of value'}${named}`;
}

/** A pair that is written as a text: its brackets are missing, or others. */
function pairWithoutBrackets(written: string): Said {
  const inner = written.replace(/^[\s[({]+|[\s\])}]+$/g, '');
  if (!inner.includes(',')) return { what: inWords(written), remedy: PAIR };
  const what = /[()]/.test(written) ? 'round brackets stand around a pair' : 'the brackets around a pair are missing';
  return { what, remedy: `[${inner.slice(0, 40)}]` };
}

function listOfAnotherSize(written: unknown, pair: boolean): Said {
  const list = Array.isArray(written) ? written : [];
  if (!pair)
    return {
      what: list.length === 0 ? 'the list is empty' : `${list.length} are listed`,
      remedy: 'one or more, or leave the key out',
    };
  const what = `${list.length} ${list.length === 1 ? 'value stands' : 'values stand'} in brackets where two belong`;
  if (list.length < 2) return { what, remedy: `two with a comma between them: [12 in, 6 in]` };
  return {
    what,
    remedy: 'two with one comma between them; a decimal point, not a comma, goes in a number: [12.5 in, 6 in]',
  };
}

function isPair(schema: JsonSchema, path: Path): boolean {
  return schemasAt(schema, path).some(({ prefixItems }) => prefixItems !== undefined);
}

type Said = Pick<Mistake, 'what' | 'remedy'>;

function unknownKey(path: Path, known: readonly string[], all: readonly string[]): Mistake {
  const key = String(path.at(-1));
  const slip = slipInKey(key, known);
  if (slip) return { path, ...slip, unknownKey: true };
  const meant = nearest(key, known);
  if (meant === undefined && path.length === 1 && all.includes(key)) {
    const what = `"${key}" stands at the left edge, and belongs to a block`;
    return { path, what, remedy: 'move it in as far as the other keys of its block', unknownKey: true };
  }
  const remedy = `${meant === undefined ? '' : `did you mean "${meant}"? `}Known here: ${known.join(', ')}`;
  return { path, what: `"${key.slice(0, 40)}" is not known here`, remedy, unknownKey: true, meant };
}

function oneOf(written: unknown, known: readonly string[]): string {
  const meant = typeof written === 'string' ? nearest(written, known) : undefined;
  return `${meant === undefined ? '' : `did you mean "${meant}"? `}One of: ${known.join(', ')}`;
}

/**
 * Of the forms a value may have, the mistakes against the one it most likely was meant to be: a block of keys is not
 * compared with words, and of blocks the one with the fewest mistakes is meant. Undefined when no form is of its kind.
 */
export function likeliestForm(issue: z.core.$ZodIssueInvalidUnion): readonly Issue[] | undefined {
  const otherKind = (e: Issue): boolean =>
    e.path.length === 0 &&
    (e.code === 'invalid_type' || e.code === 'invalid_value' || (e.code === 'custom' && e.params?.otherKind === true));
  const weight = (errors: readonly Issue[]): number =>
    errors.reduce((sum, e) => sum + (e.code === 'unrecognized_keys' ? 2 * e.keys.length : 1), 0);
  return issue.errors.filter((errors) => !errors.some(otherKind)).sort((a, b) => weight(a) - weight(b))[0];
}

function mistakesOfForms(
  issue: z.core.$ZodIssueInvalidUnion,
  path: Path,
  written: unknown,
  value: unknown,
  schema: JsonSchema,
): Mistake[] {
  const form = likeliestForm(issue);
  if (form) return form.flatMap((each) => mistakesOfOne(each, path, value, schema));
  const words = issue.errors.flat().flatMap((e) => (e.code === 'invalid_value' ? e.values.map(String) : []));
  const meant = typeof written === 'string' ? nearest(written, words) : undefined;
  const remedy = `${meant === undefined ? '' : `did you mean "${meant}"? `}${descriptionAt(schema, path) ?? words.join(', ')}`;
  return [{ path, what: inWords(written), remedy }];
}

export function valueAt(value: unknown, path: Path): unknown {
  return path.reduce(
    (here: unknown, step) =>
      typeof here === 'object' && here !== null ? (here as Record<string, unknown>)[step] : undefined,
    value,
  );
}

/** Every form the schema allows at `path`. */
function schemasAt(schema: JsonSchema, path: Path): JsonSchema[] {
  let here = forms(schema);
  for (const step of path) {
    here = here.flatMap((each) => {
      const inner =
        typeof step === 'number'
          ? (each.prefixItems?.[step] ?? each.items)
          : (each.properties?.[step] ?? each.additionalProperties);
      return typeof inner === 'object' && !Array.isArray(inner) ? forms(inner as JsonSchema) : [];
    });
  }
  return here;
}

function forms(schema: JsonSchema): JsonSchema[] {
  return [schema, ...(schema.anyOf ?? []).flatMap((each) => forms(each as JsonSchema))];
}

/** All keys anywhere in a schema. */
export function keysWithin(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const { properties = {} } = schema as JsonSchema;
  return [...Object.keys(properties), ...Object.values(schema).flatMap(keysWithin)];
}

function keysAt(schema: JsonSchema, path: Path): string[] {
  return [...new Set(schemasAt(schema, path).flatMap((each) => Object.keys(each.properties ?? {})))];
}

function descriptionAt(schema: JsonSchema, path: Path): string | undefined {
  return schemasAt(schema, path).find((each) => each.description !== undefined)?.description;
}
