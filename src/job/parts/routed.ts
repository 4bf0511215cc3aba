import Papa from 'papaparse';
import { z } from 'zod';
import { csvText } from '../../csv/csvText.js';
import type { Vertex } from '../../contour/vertex.js';
import type { RoutedChamber, RoutedRow } from '../spec/routed.js';
import type { Say } from '../mistake/say.js';
import type { Beside } from '../beside.js';
import { shortText } from '../text.js';

export const routedSchema = () =>
  shortText(
    'file beside the job with the chambers that are routed, written by: chamberwright routed JOB ROW',
  ).optional();

/**
 * One line a corner. `line` says what of: the cut itself, with its arcs, or the straight lines around it that walls are
 * proved with.
 */
const COLUMNS = [
  'row',
  'routed',
  'face_x_mm',
  'face_y_mm',
  'along_x',
  'along_y',
  'chamber',
  'place',
  'from_mm',
  'to_mm',
  'litres',
  'line',
  's_mm',
  'z_mm',
  'bulge',
] as const;
const [CUT, PROOF] = ['cut', 'proof'] as const;

const number = z.coerce.number().refine(Number.isFinite);
const lineSchema = z.object({
  row: z.string().regex(/^[LCR]\d*(-\w+)?$/),
  routed: z.iso.date(),
  face_x_mm: number,
  face_y_mm: number,
  along_x: number,
  along_y: number,
  chamber: z.string().min(1).max(20),
  place: z.coerce.number().int().min(1),
  from_mm: number,
  to_mm: number,
  litres: number,
  line: z.enum([CUT, PROOF]),
  s_mm: number,
  z_mm: number,
  bulge: number,
});
type Line = z.infer<typeof lineSchema>;

/** A file of routed rows, as `toRouted` reads it: to a millionth of a millimetre. */
export function writeRouted(rows: readonly RoutedRow[]): string {
  const exact = (value: number) => String(Math.round(value * 1e6) / 1e6);
  const lines = rows.flatMap(({ row, day, face, chambers }) =>
    chambers.flatMap(({ id, place, depth, volume, contour, profile }) => {
      const [x, y, ax, ay] = [...face.origin, ...face.along].map((value) => value);
      const of = [
        row,
        day,
        ...[x!, y!].map(exact),
        String(ax!),
        String(ay!),
        id,
        String(place),
        ...depth.map(exact),
        exact(volume),
      ];
      return [
        ...contour.map((at) => [...of, CUT, exact(at.x), exact(at.y), String(at.bulge ?? 0)]),
        ...profile.map(([s, height]) => [...of, PROOF, exact(s), exact(height), '0']),
      ];
    }),
  );
  return csvText([COLUMNS, ...lines]);
}

/**
 * The rows that a job says are routed, from the file that it names beside it.
 *
 * @param say at `routed`
 */
export function toRouted(
  name: string | undefined,
  readBeside: (name: string) => Beside,
  say: Say,
): readonly RoutedRow[] {
  if (name === undefined) return [];
  const cure = 'the name of a file in the same folder as the job, written by: chamberwright routed JOB ROW';
  if (/[/\\]/.test(name)) return refused(say, `"${name}" is a path`, cure);
  const text = readBeside(name);
  if (text === undefined) return refused(say, `there is no file "${name}" beside the job`, cure);
  if (typeof text !== 'string') return refused(say, `"${name}" beside the job cannot be read: ${text.what}`, cure);
  const read = readRouted(text);
  return typeof read === 'string'
    ? refused(say, `"${name}", ${read}`, 'the file as it was written; a copy, or write it again')
    : read;
}

function refused(say: Say, what: string, remedy: string): readonly RoutedRow[] {
  say.error([], what, remedy);
  return [];
}

/** The rows in such a file; or where it is not one any more. */
export function readRouted(text: string): readonly RoutedRow[] | string {
  const { data, errors, meta } = Papa.parse<Record<string, string>>(text.replace(/^\uFEFF/, ''), {
    header: true,
    skipEmptyLines: true,
  });
  const missing = COLUMNS.filter((column) => !(meta.fields ?? []).includes(column));
  if (missing.length > 0) return `line 1: the columns ${missing.join(', ')} are missing`;
  const [broken] = errors.filter(({ type }) => type !== 'Delimiter');
  if (broken) return `line ${(broken.row ?? 0) + 2}: ${broken.message}`;
  const lines: Line[] = [];
  for (const [i, record] of data.entries()) {
    const line = lineSchema.safeParse(record);
    if (!line.success) return `line ${i + 2}: ${String(line.error.issues[0]!.path[0])} is not what was written there`;
    lines.push(line.data);
  }
  return [...grouped(lines, ({ row }) => row)].map(([row, of]): RoutedRow => {
    const first = of[0]!;
    return {
      row,
      day: first.routed,
      face: { origin: [first.face_x_mm, first.face_y_mm], along: [first.along_x, first.along_y] },
      chambers: [...grouped(of, ({ chamber }) => chamber)].map(([id, corners]) => chamberOf(id, corners)),
    };
  });
}

function chamberOf(id: string, corners: readonly Line[]): RoutedChamber {
  const { place, from_mm: from, to_mm: to, litres } = corners[0]!;
  return {
    id,
    place,
    depth: [from, to],
    volume: litres,
    contour: corners
      .filter(({ line }) => line === CUT)
      .map(({ s_mm: x, z_mm: y, bulge }): Vertex => (bulge === 0 ? { x, y } : { x, y, bulge })),
    profile: corners.filter(({ line }) => line === PROOF).map(({ s_mm: s, z_mm: height }) => [s, height] as const),
  };
}

function grouped<T>(things: readonly T[], keyOf: (thing: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) groups.set(keyOf(thing), [...(groups.get(keyOf(thing)) ?? []), thing]);
  return groups;
}
