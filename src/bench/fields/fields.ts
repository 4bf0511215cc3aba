import type { Job } from '../../job/job.js';
import type { Path } from '../../job/mistake/say.js';
import { parseDensity, printDensity } from '../../length/density.js';
import { parseLength, printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import { parseWeight, printWeight } from '../../length/weight.js';
import { spoken } from '../state/words.js';

/** One value of the job file that a builder can change. */
export interface Field {
  readonly path: Path;
  readonly label: string;
  /** What it is, in the words of the job file's own description. */
  readonly help: string;
  /** As it stands in the file; absent where the file leaves it out. */
  readonly value?: string | number;
  /** What counts where the file leaves it out. */
  readonly usual?: string;
  /** Where only certain words are allowed. */
  readonly choices?: readonly string[];
  readonly kind: 'length' | 'weight' | 'density' | 'other';
}

export interface FieldGroup {
  readonly title: string;
  readonly fields: readonly Field[];
  /** Where it begins a thing of a list: its place, by which it is taken away. */
  readonly item?: Path;
  /** Where it ends a list: the list's place, to which another may be added. */
  readonly list?: Path;
}

/** The part of JSON Schema (draft 2020-12) that the job file's schema uses. */
export interface Schema {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: Schema | boolean;
  readonly items?: Schema | boolean;
  readonly prefixItems?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly enum?: readonly string[];
  readonly examples?: readonly (string | number)[];
}

/**
 * The values of one section of the job file, in the file's order; those of `chambers` also where they are left out.
 *
 * @param section a key at the top of the file
 * @param value what stands there, as plain data
 * @param job the job as it was last read, for what counts where the file is silent
 */
export function fieldGroups(
  section: string,
  value: unknown,
  schema: Schema,
  job: Job | undefined,
  units: Units,
): FieldGroup[] {
  const title = spoken(section);
  if (section === 'chambers') {
    return [{ title, fields: chamberFields(value, schema, job, units) }];
  }
  return groupsIn(value, schema, [section], title);
}

function groupsIn(value: unknown, schema: Schema, path: Path, title: string): FieldGroup[] {
  if (isScalar(value)) return [{ title, fields: [fieldAt(path, value, schema)] }];
  const own: Field[] = [];
  const groups: FieldGroup[] = [];
  for (const [key, each] of entriesOf(value)) {
    const at = [...path, key];
    const inner = schemaOf(schema, key);
    if (isScalar(each)) own.push(fieldAt(at, each, inner));
    else if (isSmall(each)) own.push(...leavesOf(each, inner, at));
    else {
      const [first, ...rest] = groupsIn(each, inner, at, titleOf(title, key, each));
      if (first) groups.push(typeof key === 'number' ? { ...first, item: at } : first, ...rest);
    }
  }
  const last = groups.pop();
  if (last) groups.push(Array.isArray(value) ? { ...last, list: path } : last);
  return [...(own.length > 0 ? [{ title, fields: own }] : []), ...groups];
}

function leavesOf(value: unknown, schema: Schema, path: Path): Field[] {
  if (isScalar(value)) return [fieldAt(path, value, schema)];
  return entriesOf(value).flatMap(([key, each]) => leavesOf(each, schemaOf(schema, key), [...path, key]));
}

function chamberFields(value: unknown, schema: Schema, job: Job | undefined, units: Units): Field[] {
  const leaves = (inner: Schema, path: Path, written: unknown, usual: unknown): Field[] =>
    Object.entries(inner.properties ?? {}).flatMap(([key, each]) => {
      const at = [...path, key];
      const here = (written as Record<string, unknown> | undefined)?.[key];
      const counts = (usual as Record<string, unknown> | undefined)?.[key === 'cutter' ? 'cutterDiameter' : key];
      if (each.properties) return leaves(each, at, here, counts);
      const field = fieldAt(at, isScalar(here) ? here : undefined, each);
      return [{ ...field, ...(counts !== undefined && { usual: inUnits(counts, field.kind, units) }) }];
    });
  return leaves(schema, ['chambers'], value, job?.chambers);
}

function inUnits(value: unknown, kind: Field['kind'], units: Units): string {
  return typeof value === 'number' && kind === 'length' ? printLength(value, units) : String(value);
}

function fieldAt(path: Path, value: string | number | undefined, schema: Schema): Field {
  const choices = choicesOf(schema, value);
  const named = path.filter((step) => typeof step === 'string').slice(-2);
  const last = path.at(-1);
  const label =
    typeof last === 'number'
      ? (schema.description ?? `${named.at(-1)} ${last + 1}`)
      : NESTED.has(String(path.at(-2)))
        ? `${spoken(String(path.at(-2)))}, ${spoken(String(last))}`
        : spoken(String(last));
  return {
    path,
    label,
    help: schema.description ?? '',
    ...(value !== undefined && { value }),
    ...(choices && { choices }),
    kind: kindOf(schema),
  };
}

/** Blocks whose keys say nothing without their name. */
const NESTED = new Set(['smallest', 'rectangle', 'thickness', 'section', 'nose', 'tail']);

function choicesOf({ enum: words }: Schema, value: unknown): readonly string[] | undefined {
  return words && (value === undefined || words.includes(String(value))) ? words : undefined;
}

function kindOf({ examples = [], anyOf = [] }: Schema): Field['kind'] {
  const [first] = [...examples, ...anyOf.flatMap((each) => each.examples ?? [])];
  if (typeof first !== 'string') return 'other';
  if (parseLength(first, 'mm').ok) return 'length';
  if (parseWeight(first, 'mm').ok) return 'weight';
  return parseDensity(first, 'mm').ok ? 'density' : 'other';
}

/** The schema of a key or place within another's. Of several forms, the first that knows the key. */
function schemaOf(schema: Schema, key: string | number): Schema {
  const own =
    typeof key === 'number'
      ? (schema.prefixItems?.[key] ?? (typeof schema.items === 'object' ? schema.items : undefined))
      : (schema.properties?.[key] ??
        (typeof schema.additionalProperties === 'object' ? schema.additionalProperties : undefined));
  if (own) return own;
  for (const form of [...(schema.anyOf ?? []), ...(schema.oneOf ?? [])]) {
    const inner = schemaOf(form, key);
    if (inner !== NOTHING) return inner;
  }
  return NOTHING;
}

const NOTHING: Schema = {};

function titleOf(title: string, key: string | number, value: unknown): string {
  const name = nameOf(value);
  if (typeof key === 'number') return name ? `${title} ${key + 1}: ${name}` : `${title} ${key + 1}`;
  return `${title}: ${spoken(key)}`;
}

function nameOf(value: unknown): string | undefined {
  const { name, strip, stringer, at } = (value ?? {}) as Record<string, unknown>;
  const found = name ?? strip ?? stringer ?? at;
  return isScalar(found) ? String(found) : undefined;
}

/** Pairs and blocks of a few scalars stand among their neighbours. */
function isSmall(value: unknown): boolean {
  const entries = entriesOf(value);
  return entries.length <= 5 && entries.every(([, each]) => isScalar(each)) && nameOf(value) === undefined;
}

function entriesOf(value: unknown): [string | number, unknown][] {
  if (Array.isArray(value)) return value.map((each, i) => [i, each]);
  return typeof value === 'object' && value !== null ? Object.entries(value) : [];
}

function isScalar(value: unknown): value is string | number {
  return typeof value === 'string' || typeof value === 'number';
}

/** A value of the file as it is shown: as written where the file's units are on show, else in the others. */
export function shownValue({ value, kind }: Field, file: Units, units: Units): string {
  if (value === undefined) return '';
  if (file === units) return String(value);
  const [parse, print] = {
    length: [parseLength, printLength],
    weight: [parseWeight, printWeight],
    density: [parseDensity, printDensity],
    other: [undefined, undefined],
  }[kind] as [typeof parseLength | undefined, ((value: number, units: Units) => string) | undefined];
  const parsed = parse?.(value, file);
  return parsed?.ok ? print!(parsed.value, units) : String(value);
}
