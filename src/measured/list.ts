import Papa from 'papaparse';
import words from '../../templates/measuring.json' with { type: 'json' };
import { csvText, guarded, unguarded } from '../csv/csvText.js';
import type { Finding } from '../finding/finding.js';
import { nearest } from '../job/mistake/nearest.js';
import { say } from '../words/say.js';
import { VALUES, type Measure } from './measure.js';

/** Columns of a list of measures: the keys that the job has for them. */
export const COLUMNS = ['at', 'fromTail', 'side', 'off', 'chamber', 'stage', ...VALUES] as const;

/** Which keys say of what a value is. */
const PLACES: Readonly<Record<(typeof VALUES)[number], readonly (typeof COLUMNS)[number][]>> = {
  thickness: ['at', 'fromTail', 'side', 'off'],
  width: ['at', 'fromTail'],
  deck: ['chamber'],
  bottom: ['chamber'],
  rail: ['chamber'],
  weight: ['stage'],
};

/** A measure and the line of the list that it stands in, from 1. */
export interface Listed {
  readonly line: number;
  readonly measure: Measure;
}

/**
 * Reads a list of measures (CSV; a line may hold several of one place, and lines without any are passed over), or says
 * what is wrong with its columns.
 *
 * @param name of the list, for what is said
 */
export function readList(text: string, name: string): readonly Listed[] | Finding {
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''));
  const [head = [], ...lines] = data.map((cells) => cells.map((cell) => unguarded(cell).trim()));
  const strange = head.find((column) => column !== '' && !(COLUMNS as readonly string[]).includes(column));
  if (strange !== undefined || !VALUES.some((value) => head.includes(value))) {
    const near = strange === undefined ? undefined : nearest(strange, COLUMNS);
    const { unknown, none, near: meant, columns } = words.list;
    const remedy = say(near ? meant : columns, { near: near ?? '', columns: COLUMNS.join(', ') });
    return { where: name, what: strange === undefined ? none : say(unknown, { column: strange }), remedy };
  }
  return lines.flatMap((cells, i) => {
    const given = Object.fromEntries(head.map((column, c) => [column, cells[c] ?? '']));
    return VALUES.filter((value) => (given[value] ?? '') !== '').map((value): Listed => {
      const keys = [...PLACES[value], value].filter((key) => (given[key] ?? '') !== '');
      return {
        line: i + 2,
        measure: {
          list: value === 'weight' ? 'weighings' : 'shaped',
          item: keys.map((key) => [key, given[key]!] as const),
        },
      };
    });
  });
}

/** A list of measures that reads as them. */
export function listText(measures: readonly Measure[]): string {
  const lines = measures.map(({ item }) => {
    const given = Object.fromEntries(item);
    return COLUMNS.map((column) => guarded(given[column] ?? ''));
  });
  return csvText([[...COLUMNS], ...lines]);
}
