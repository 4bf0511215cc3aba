import { counted } from '../../length/counted.js';
import Papa from 'papaparse';
import { parseLength, printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { JobFinding } from '../finding.js';
import { nearest } from '../mistake/nearest.js';
import { troubleWithText } from '../text/trouble-with-text.js';

/** A point of a table of offsets, and where it stands in the table. Heights are over the table's own base line, mm. */
export interface OffsetPoint {
  readonly y: number;
  readonly z: number;
  readonly edge: boolean;
  readonly line: number;
}

/** The points of one station, from the keel out to the widest point and over the deck to the centreline. */
export interface OffsetStation {
  /** From the nose tip, mm. */
  readonly x: number;
  /** Where the station begins in the table. */
  readonly line: number;
  readonly points: readonly OffsetPoint[];
}

const COLUMNS = ['station', 'y', 'z', 'edge'] as const;
type Column = (typeof COLUMNS)[number];

/** What may stand in the edge column; everything else is a mistake. */
const HARD = ['x', 'edge', 'hard', 'yes', '1'];
const SOFT = ['', 'soft', 'no', '0'];

/**
 * Reads a table of offsets: CSV (RFC 4180; commas, semicolons or tabs) with the columns station, y, z and, if wanted,
 * edge. Lengths as anywhere in a job; lines that are empty or begin with # are left out. Findings carry the line in the
 * table.
 *
 * @param file the table's name, for the findings
 */
export function readOffsets(
  text: string,
  file: string,
  units: Units,
): { stations: OffsetStation[]; findings: JobFinding[] } {
  const findings: JobFinding[] = [];
  const say = (line: number, path: string, what: string, remedy: string): void => {
    findings.push({ severity: 'error', where: { file, line, path }, what, remedy });
  };
  const trouble = troubleWithText(text, 'a table of offsets');
  if (trouble) {
    say(trouble.line ?? 1, '', trouble.what, trouble.remedy);
    return { stations: [], findings };
  }
  const rows = rowsOf(text, say);
  const header = rows.shift();
  if (!header) {
    if (findings.length === 0)
      say(1, '', 'the table is empty', `begin with a line "station,y,z,edge", then one point a line`);
    return { stations: [], findings };
  }
  const columns = columnsOf(header, say);
  if (!columns) return { stations: [], findings };

  const stations: { x: number; line: number; points: OffsetPoint[] }[] = [];
  for (const { cells, line } of rows) {
    const length = (column: Column): number => {
      const cell = (cells[columns[column]!] ?? '').trim();
      const parsed = parseLength(cell, units);
      if (parsed.ok) return parsed.value;
      say(line, column, parsed.what, parsed.remedy);
      return NaN;
    };
    if (cells.length > header.cells.length) {
      say(
        line,
        '',
        `${cells.length} cells in this line, ${header.cells.length} in the first`,
        'one cell a column; a decimal comma makes two of one',
      );
      continue;
    }
    const x = length('station');
    const point = {
      y: length('y'),
      z: length('z'),
      edge: edgeOf(columns.edge === undefined ? '' : cells[columns.edge], line, say),
      line,
    };
    const last = stations.at(-1);
    if (last && (last.x === x || Number.isNaN(x))) last.points.push(point);
    else stations.push({ x, line, points: [point] });
  }
  stations.forEach((station, i) => checkStation(station, stations[i - 1], units, say));
  return { stations, findings };
}

interface TableRow {
  readonly cells: readonly string[];
  readonly line: number;
}

type SayInTable = (line: number, path: string, what: string, remedy: string) => void;

function rowsOf(text: string, say: SayInTable): TableRow[] {
  const rows: TableRow[] = [];
  const plain = text.replace(/^\uFEFF/, '');
  const { data, errors } = Papa.parse<string[]>(plain, { skipEmptyLines: false, delimiter: delimiterOf(plain) });
  for (const error of errors.filter(({ type }) => type === 'Quotes')) {
    say(
      (error.row ?? 0) + 1,
      '',
      'a quoted cell does not end where it should',
      'close it with ", and write a " within it twice: "3/4"""',
    );
  }
  data.forEach((cells, i) => {
    const broken = cells.some((cell) => /[\r\n]/.test(cell));
    if (broken && errors.length === 0)
      say(i + 1, '', 'a cell runs over more than one line', 'keep each point on one line');
    const empty = cells.every((cell) => cell.trim() === '');
    if (!broken && !empty && !cells[0]!.trim().startsWith('#')) rows.push({ cells, line: i + 1 });
  });
  return rows;
}

/** The delimiter of the table's first line: what stands most often in it. */
function delimiterOf(text: string): string {
  const first = text.split(/\r?\n/).find((line) => line.trim() !== '' && !line.trimStart().startsWith('#')) ?? '';
  const count = (delimiter: string): number => first.split(delimiter).length;
  return [',', ';', '\t'].reduce((best, delimiter) => (count(delimiter) > count(best) ? delimiter : best));
}

/** Where each column stands; undefined, and said, when one that is needed is missing. */
function columnsOf({ cells, line }: TableRow, say: SayInTable): Partial<Record<Column, number>> | undefined {
  const names = cells.map((cell) => cell.trim().toLowerCase());
  const where: Partial<Record<Column, number>> = {};
  names.forEach((name, i) => {
    const column = COLUMNS.find((each) => each === name);
    const meant = nearest(name, COLUMNS);
    if (column && where[column] === undefined) where[column] = i;
    else if (column) say(line, '', `the column "${column}" is there twice`, 'keep one of them');
    else if (name !== '')
      say(
        line,
        '',
        `"${cells[i]!.trim().slice(0, 40)}" is not a column of a table of offsets`,
        meant ? `did you mean "${meant}"?` : 'station, y, z or edge',
      );
  });
  const lacking = (['station', 'y', 'z'] as const).filter((column) => where[column] === undefined);
  if (lacking.length === 0) return where;
  say(line, '', `the table's first line lacks ${lacking.join(', ')}`, 'begin with a line "station,y,z,edge"');
  return undefined;
}

function edgeOf(cell: string | undefined, line: number, say: SayInTable): boolean {
  const word = (cell ?? '').trim().toLowerCase();
  if (HARD.includes(word)) return true;
  if (!SOFT.includes(word))
    say(
      line,
      'edge',
      `"${word.slice(0, 40)}" does not say whether the edge is hard`,
      'write x for a hard edge, nothing for a soft one',
    );
  return false;
}

function checkStation(station: OffsetStation, before: OffsetStation | undefined, units: Units, say: SayInTable): void {
  const { x, line, points } = station;
  if (before && x <= before.x) {
    say(
      line,
      'station',
      `the station at ${printLength(x, units)} follows one at ${printLength(before.x, units)}`,
      'list the stations from nose to tail, the points of each together',
    );
  }
  if (points.some(({ y, z }) => Number.isNaN(y) || Number.isNaN(z))) return;
  const first = points[0]!;
  const last = points.at(-1)!;
  if (points.length < 3) {
    say(
      line,
      '',
      `the station at ${printLength(x, units)} has ${counted(points.length, 'point')}`,
      'at least three: keel, widest point, deck at the centreline',
    );
    return;
  }
  for (const [point, which] of [
    [first, 'first (the keel)'],
    [last, 'last (the deck)'],
  ] as const) {
    if (point.y !== 0)
      say(
        point.line,
        'y',
        `the ${which} point of the station is ${printLength(point.y, units)} off the centreline`,
        '0 there',
      );
  }
  if (last.z <= first.z)
    say(
      last.line,
      'z',
      'the deck lies no higher than the bottom',
      'list the points from the keel out and over the deck',
    );
  const apex = points.reduce((widest, { y }, i) => (y > points[widest]!.y ? i : widest), 0);
  if (points[apex]!.y <= 0) {
    say(
      line,
      'y',
      `the station at ${printLength(x, units)} has no width`,
      'y is measured outward from the centreline, above 0 at the rail',
    );
    return;
  }
  points.forEach((point, i) => {
    const previous = points[i - 1];
    if (!previous) return;
    const backward = i <= apex ? point.y < previous.y : point.y > previous.y;
    if (backward)
      say(
        point.line,
        'y',
        'the section goes back on itself here',
        'y rises from the keel to the widest point, and falls from there to the deck at the centreline',
      );
    else if (point.y === previous.y && point.z === previous.z)
      say(point.line, 'y', 'the same point as the line before', 'list each point once');
  });
}
