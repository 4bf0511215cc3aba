import { z } from 'zod';
import { parseArealWeight, printArealWeight } from '../length/areal.js';
import { parseDensity, printDensity } from '../length/density.js';
import { parseLength, printLength } from '../length/length.js';
import { roundedAs } from '../length/rounded.js';
import type { Parsed } from '../length/parsed.js';
import { parseShare } from '../length/share.js';
import { MM_PER_INCH, type Units } from '../length/units.js';
import { parseWeight, printWeight } from '../length/weight.js';

/**
 * Takes the place of a value that could not be read, so that the rest of the file can still be checked. Reads as
 * not-a-number, which no comparison complains of. No file holds it: files with NUL in them are refused.
 */
export const STAND_IN = '\u0000';

/** What is sensible, and why not more or less. Both ends allowed. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
  /** Reads on from "between … and …: ". */
  readonly because: string;
}

export type QuantitySchema = z.ZodType<number, unknown>;

/**
 * Schemas of everything that carries a unit, for a file whose bare numbers are in `units`. All give mm, kg, kg/m³,
 * g/m², shares of 1.
 */
export interface Quantities {
  readonly units: Units;
  length(description: string, bounds: Bounds): QuantitySchema;
  weight(description: string, bounds: Bounds): QuantitySchema;
  density(description: string, bounds: Bounds): QuantitySchema;
  share(description: string, bounds: Bounds): QuantitySchema;
  areal(description: string, bounds: Bounds): QuantitySchema;
}

export function quantities(units: Units): Quantities {
  return {
    units,
    length: (description, bounds) =>
      quantity({
        description,
        bounds,
        examples: units === 'mm' ? ['19 mm', '1.9 cm', '3/4 in'] : ['3/4 in', '11 ft 4 in', '19 mm'],
        parse: (written) => parseLength(written, units),
        print: (mm, bound) => printBound(mm, units, bound),
        otherUnits: ['mm', 'in', 'ft'],
      }),
    weight: (description, bounds) =>
      quantity({
        description,
        bounds,
        examples: ['17.2 kg', '38 lb', '37 lb 6 oz'],
        parse: (written) => parseWeight(written, units),
        print: (kg) => printWeight(kg, units),
        otherUnits: ['kg', 'g', 'lb', 'oz'],
      }),
    density: (description, bounds) =>
      quantity({
        description,
        bounds,
        examples: ['15 kg/m3', '2 lb/ft3'],
        parse: (written) => parseDensity(written, units),
        print: (density) => printDensity(density, units),
        otherUnits: ['kg/m3', 'lb/ft3'],
      }),
    areal: (description, bounds) =>
      quantity({
        description,
        bounds,
        examples: units === 'mm' ? ['200 g/m2', '6 oz'] : ['6 oz', '200 g/m2'],
        parse: (written) => parseArealWeight(written, units),
        print: (gramsPerM2) => printArealWeight(gramsPerM2, units),
        otherUnits: ['g/m2', 'oz'],
      }),
    share: (description, bounds) =>
      quantity({
        description,
        bounds,
        examples: ['45 %', 0.45],
        parse: parseShare,
        print: (share) => `${Number((share * 100).toFixed(1))} %`,
        otherUnits: ['%'],
      }),
  };
}

interface QuantityRules {
  readonly description: string;
  readonly bounds: Bounds;
  readonly examples: (string | number)[];
  readonly parse: (written: string | number) => Parsed;
  /** As a bound it is written so that what is written lies within. */
  readonly print: (value: number, bound?: Bound) => string;
  /** Units that may have been meant where a number is out of bounds without one, the likeliest first. */
  readonly otherUnits: readonly string[];
}

type Bound = 'least' | 'most';

/** Below this an inch rule has no marks to write a bound by, mm. */
const FINEST_MARK = MM_PER_INCH / 8;

/**
 * A bound of a length as it is told: what is finer than a rule's marks in decimals, what is longer than a bench in
 * feet.
 */
function printBound(mm: number, units: Units, bound?: Bound): string {
  if (units === 'in' && mm !== 0 && Math.abs(mm) < FINEST_MARK) {
    const inches = mm / MM_PER_INCH;
    const step = 10 ** (Math.floor(Math.log10(Math.abs(inches))) - 1);
    const steps = { least: Math.ceil, most: Math.floor }[bound ?? 'most'](
      inches / step + (bound === 'least' ? -SAME : SAME),
    );
    return `${Number((steps * step).toPrecision(2))} in`;
  }
  const within = bound ? roundedAs(bound === 'least' ? 'needed' : 'there', mm, units) : mm;
  return printLength(within, units, Math.abs(mm) > 1500 ? 'feet' : undefined);
}

/** What arithmetic leaves of a whole step. */
const SAME = 1e-9;

function quantity({ description, bounds, examples, parse, print, otherUnits }: QuantityRules): QuantitySchema {
  return z
    .any()
    .meta({ description, examples, anyOf: [{ type: 'number' }, { type: 'string' }] })
    .transform((written: unknown, context): number => {
      if (written === STAND_IN) return NaN;
      const wrong = (message: string, remedy: string, otherKind = false): never => {
        context.addIssue({ code: 'custom', message, params: { remedy, otherKind } });
        return z.NEVER;
      };
      if (written === undefined) return wrong(MISSING, `add it: ${description}`);
      if (typeof written !== 'string' && typeof written !== 'number') {
        return wrong(
          `${inWords(written)} where a single value should be`,
          `write it like ${examples.join(' or ')}`,
          true,
        );
      }
      const tail = typeof written === 'string' ? strayTail(written) : undefined;
      if (tail) return wrong(tail.what, tail.remedy);
      const parsed = parse(written);
      if (!parsed.ok) return wrong(parsed.what, parsed.remedy);
      if (isWithin(parsed.value, bounds)) return parsed.value;
      const meant = withUnitMeant(written, otherUnits, parse, bounds);
      return wrong(
        `${print(parsed.value)} cannot be right here`,
        `${meant === undefined ? '' : `${meant}, if that is meant; `}between ${print(bounds.least, 'least')} and ${print(bounds.most, 'most')}: ${bounds.because}`,
      );
    });
}

/** What does not belong to a value that a line ends with. */
function strayTail(written: string): { what: string; remedy: string } | undefined {
  const [, value, sign] = /^(.*?)\s*([;,])\s*$/.exec(written) ?? [];
  if (sign !== undefined)
    return { what: `${inWords(value)} with a "${sign}" behind it`, remedy: `without it: ${value}` };
  const note = written.indexOf('#');
  if (note <= 0) return undefined;
  const before = written.slice(0, note).trim();
  return { what: `${inWords(before)} with a # right behind it`, remedy: `a space before the #: ${before} #` };
}

function isWithin(value: number, { least, most }: Bounds): boolean {
  return value >= least && value <= most;
}

/** A bare number with the unit that would make it right, if one does. */
function withUnitMeant(
  written: string | number,
  units: readonly string[],
  parse: (written: string) => Parsed,
  bounds: Bounds,
): string | undefined {
  if (!/^[\d./ -]+$/.test(`${written}`)) return undefined;
  return units
    .map((unit) => `${written} ${unit}`)
    .find((each) => {
      const parsed = parse(each);
      return parsed.ok && isWithin(parsed.value, bounds);
    });
}

/** Marks a finding about a key that isn't there; the reader puts the key's name to it. */
export const MISSING = 'is missing';

/** What a value in a file is, for people. */
export function inWords(value: unknown): string {
  if (value === null) return 'nothing is written';
  if (Array.isArray(value)) return 'a list is written';
  if (typeof value === 'object') return 'a block of keys is written';
  if (typeof value === 'boolean') return `"${value}" is written`;
  return `"${String(value).slice(0, 40)}" is written`;
}
