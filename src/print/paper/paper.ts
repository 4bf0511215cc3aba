import table from '../../../templates/paper.json' with { type: 'json' };

/**
 * PDF user space is 1/72 in (ISO 32000-1, 8.3.2.3) and an inch is 25.4 mm exactly: the one number between millimetres
 * and PDF.
 */
export const POINTS_PER_MM = 72 / 25.4;

/**
 * The longest side of a PDF page, in its own units (ISO 32000-1, Annex C): 200 in, 5080 mm. Longer drawings are split.
 */
export const LONGEST_PDF_PAGE = 14_400;

export const LONGEST_PAGE_MM = LONGEST_PDF_PAGE / POINTS_PER_MM;

/** Paper to print on, mm. A sheet is given upright (`width` the short side); a roll has a width only. */
export type Paper =
  | { readonly kind: 'sheet'; readonly name: string; readonly width: number; readonly height: number }
  | { readonly kind: 'roll'; readonly name: string; readonly width: number };

/** All sheets of the table, with the standard each size comes from. */
export const sheets: readonly (Paper & { readonly kind: 'sheet'; readonly standard: string })[] = table.sheets.map(
  ({ name, width, height, standard }) => ({ kind: 'sheet', name, width, height, standard }),
);

/**
 * The sheet of a name, whatever its case: `A4`, `letter`, `ANSI B`, `arch d`.
 *
 * @returns undefined when the table has no such name; `sheetNames` lists those it has.
 */
export function sheetNamed(name: string): (Paper & { readonly kind: 'sheet' }) | undefined {
  const wanted = plain(name);
  const row = table.sheets.findIndex((sheet) => [sheet.name, ...(sheet.also ?? [])].some((n) => plain(n) === wanted));
  return sheets[row];
}

export const sheetNames: readonly string[] = table.sheets.map((sheet) => sheet.name);

/** A roll of `width` mm across: one long page a run, as long as the drawing and no longer than a PDF page may be. */
export function rollOf(width: number): Paper & { readonly kind: 'roll' } {
  return { kind: 'roll', name: `roll ${String(Math.round(width * 10) / 10)} mm`, width };
}

/** The largest sheet that a hand can hold, mm: A3. */
const HANDY = 432;

/** Whether lists and notes are printed on it too, or go on A4. */
export const isHandy = (paper: Paper): paper is Paper & { readonly kind: 'sheet' } =>
  paper.kind === 'sheet' && paper.height <= HANDY;

/** What lists and notes are printed on beside full-size drawings on a paper. */
export const documentsBeside = (paper: Paper): Paper & { readonly kind: 'sheet' } =>
  isHandy(paper) ? paper : sheetNamed('A4')!;

const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
