import type { SectionStation } from '../spec/board.js';
import type { ProfileStation } from '../spec/board.js';
import type { PlanPoint } from '../spec/board.js';
import type { BoardSpec } from '../spec/board.js';
import { counted } from '../../length/counted.js';
import { z } from 'zod';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import type { OffsetStation } from './offsets.js';
import { noseSchema, outlineSchema, tailSchema, toNose, toOutline, toTail } from './outline.js';
import { stationSchema, toMeasured, type Measured } from './station.js';

export function boardSchema(q: Quantities) {
  return z
    .strictObject({
      length: q.length('from the nose tip to the hindmost point of the tail, straight, not along the curve', {
        least: 600,
        most: 8000,
        because: 'a shorter board has no room for chambers, and longer ones are not supported',
      }),
      nose: noseSchema(q),
      tail: tailSchema(q),
      outline: outlineSchema(q).optional(),
      left: z
        .strictObject({ nose: noseSchema(q).optional(), tail: tailSchema(q).optional(), outline: outlineSchema(q) })
        .meta({ description: 'the left side, for a board that differs from side to side' })
        .optional(),
      stations: z.array(stationSchema(q)).meta({ description: 'what was measured along the board, nose to tail' }),
      offsets: z
        .string()
        .meta({ description: 'a table of offsets beside the job: CSV with the columns station, y, z, edge' })
        .optional(),
    })
    .meta({ description: 'the finished board, before glassing' });
}

export type BoardFile = z.infer<ReturnType<typeof boardSchema>>;

/** @param offsets the table of offsets, already read; empty when there is none */
export function toBoard(file: BoardFile, offsets: readonly OffsetStation[], units: Units, say: Say): BoardSpec {
  const { length } = file;
  const stations = toMeasured(file.stations, length, units, say.at('stations'));
  const tabled = fromTable(offsets, length, units, say.at('offsets'));
  const profile = joined(stations.profile, tabled.profile, 'heights', units, say);
  const sections = joined(stations.sections, tabled.sections, 'a section', units, say);
  const points = file.outline
    ? toOutline(file.outline, length, units, say.at('outline'))
    : joined(stations.points, tabled.points, 'a width', units, say);
  if (file.outline && stations.points.length > 0) {
    say.error(['outline'], 'the width is given twice, by the outline and at stations', 'leave out one of them');
  }
  if (points.length < 2) {
    say.error(
      [file.outline ? 'outline' : 'stations'],
      `the outline has ${counted(points.length, 'point')}`,
      'at least two, each with the width there',
    );
  }
  checkProfile(profile, length, units, say.at('stations'));
  if (sections.length === 0) {
    say.error(
      ['stations'],
      'no station has a section',
      'give at least one station a section: {apex, above, below, crown}',
    );
  }
  return {
    length,
    right: { nose: toNose(file.nose), tail: toTail(file.tail, units, say.at('tail')), points },
    ...(file.left && {
      left: {
        nose: toNose(file.left.nose ?? file.nose),
        tail: file.left.tail
          ? toTail(file.left.tail, units, say.at('left', 'tail'))
          : toTail(file.tail, units, say.at('tail')),
        points: toOutline(file.left.outline, length, units, say.at('left', 'outline')),
      },
    }),
    profile: fromLowest(profile, offsets.length > 0, units, say),
    sections,
  };
}

/**
 * A table's stations as if they had been measured one by one. Section heights are taken over the bottom at the
 * centreline.
 */
function fromTable(table: readonly OffsetStation[], length: number, units: Units, say: Say): Measured {
  const profile: ProfileStation[] = [];
  const points: PlanPoint[] = [];
  const sections: SectionStation[] = [];
  for (const { x, line, points: section } of table) {
    if (x <= 0 || x >= length) {
      const range = `a place between 0 and ${printLength(length, units, 'feet')}; the tips belong to nose, tail and stations`;
      say.error(
        [],
        `the station at ${printLength(x, units)} (line ${line} of the table) lies at a tip or off the board`,
        range,
      );
    }
    const bottom = section[0]!.z;
    profile.push({ x, bottom, thickness: section.at(-1)!.z - bottom });
    points.push({ x, half: Math.max(...section.map(({ y }) => y)) });
    sections.push({ x, kind: 'points', points: section.map(({ y, z, edge }) => ({ y, z: z - bottom, edge })) });
  }
  return { profile, points, sections };
}

/** Both lists as one from nose to tail; a place that is in both is said. */
function joined<T extends { readonly x: number }>(
  stations: readonly T[],
  table: readonly T[],
  what: string,
  units: Units,
  say: Say,
): T[] {
  for (const { x } of stations) {
    if (!table.some((each) => each.x === x)) continue;
    const place = printLength(x, units);
    say.error(
      ['stations'],
      `the station at ${place} has ${what}, and so has the table of offsets`,
      'leave it out of one of them',
    );
  }
  return [...stations, ...table].sort((a, b) => a.x - b.x);
}

/** The profile reaches from tip to tip: nothing about the board's ends is guessed. */
function checkProfile(profile: readonly ProfileStation[], length: number, units: Units, say: Say): void {
  if (profile.some(({ x }) => Number.isNaN(x)) || Number.isNaN(length)) return;
  const lacking = [
    ...(profile[0]?.x === 0 ? [] : [{ tip: 'nose', write: '{at: 0, bottom: …, thick: …}' }]),
    ...(profile.at(-1)?.x === length ? [] : [{ tip: 'tail', write: '{fromTail: 0, bottom: …, thick: …}' }]),
  ];
  for (const { tip, write } of lacking) {
    say.error([], `no bottom height and thickness at the ${tip} tip`, `add a station ${write} there`);
  }
  if (profile.length > 0 && profile.every(({ thickness }) => thickness === 0)) {
    say.error(
      [],
      `the board has no thickness anywhere`,
      `give the thickness between the tips, for instance ${printLength(90, units)}`,
    );
  }
}

/**
 * Heights counted from the lowest bottom. A table's base line may lie anywhere; at stations, another is worth a word.
 */
function fromLowest(profile: readonly ProfileStation[], tabled: boolean, units: Units, say: Say): ProfileStation[] {
  const lowest = Math.min(...profile.map(({ bottom }) => bottom));
  if (Math.abs(lowest) > 0.05 && !tabled && Number.isFinite(lowest)) {
    const height = printLength(lowest, units);
    say.warning(
      ['stations'],
      `the lowest bottom height is ${height}, not 0`,
      `heights are counted from there; if the base line is right, nothing needs doing`,
    );
  }
  return profile.map(({ x, bottom, thickness }) => ({ x, bottom: bottom - lowest, thickness }));
}
