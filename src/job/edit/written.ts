import { printLength } from '../../length/length.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';

/** An inch rule is marked this fine, parts of an inch; lengths between its marks are written in mm. */
const INCH_PARTS = 16;
/** Two lengths nearer than this are the same, mm. */
const SAME = 1e-6;

/**
 * A length as it goes into the job file, without loss: a bare number where one stood and the file is in mm, a fraction
 * of an inch where the rule has a mark for it, else mm.
 *
 * @param mm the length, mm
 * @param units the file's
 * @param before what stood there
 */
export function writtenLength(mm: number, units: Units, before: unknown): string {
  const exact = `${Number(mm.toFixed(3))}`;
  if (units === 'mm') return typeof before === 'string' && /mm\s*$/.test(before) ? `${exact} mm` : exact;
  const parts = (mm / MM_PER_INCH) * INCH_PARTS;
  return Math.abs(parts - Math.round(parts)) < SAME * INCH_PARTS ? printLength(mm, units) : `${exact} mm`;
}

/** The step by which lengths are dragged, mm: what can be read off the rule. */
export function ruleStep(units: Units): number {
  return units === 'mm' ? 1 : MM_PER_INCH / INCH_PARTS;
}

/** What a builder typed with a unit of its own where a bare number would be taken for another one. */
export function withUnit(typed: string, shown: Units, file: Units): string {
  const text = typed.trim();
  return shown !== file && /^[-+]?[\d\s./½¼¾⅛⅜⅝⅞]+$/.test(text) ? `${text} ${shown}` : text;
}
