import type { SectionStation } from '../spec/board.js';
import type { ProfileStation } from '../spec/board.js';
import type { PlanPoint } from '../spec/board.js';
import { z } from 'zod';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';
import { alongSchema, placeAlong } from './along.js';
import { sectionSchema, toSection } from './section.js';

export function stationSchema(q: Quantities) {
  const width = { least: 1, most: 2000, because: 'no board is wider' };
  return z.strictObject({
    ...alongSchema(q, 'place of the station'),
    width: q.length('whole width of the board there', width).optional(),
    half: q.length('half of the width there, instead of the width', { ...width, most: 1000 }).optional(),
    bottom: q
      .length('height of the bottom on the centreline over a straight base line (the rocker)', {
        least: -1000,
        most: 1000,
        because: 'no board lifts by more',
      })
      .optional(),
    thick: q.length('thickness on the centreline', { least: 0, most: 400, because: 'no board is thicker' }).optional(),
    section: sectionSchema(q).optional(),
  });
}

export type StationFile = z.infer<ReturnType<typeof stationSchema>>;

/** What was measured at the stations, each kind by itself, nose to tail. */
export interface Measured {
  readonly profile: readonly ProfileStation[];
  readonly points: readonly PlanPoint[];
  readonly sections: readonly SectionStation[];
}

export function toMeasured(file: readonly StationFile[], length: number, units: Units, say: Say): Measured {
  const profile: ProfileStation[] = [];
  const points: PlanPoint[] = [];
  const sections: SectionStation[] = [];
  let before = -Infinity;
  file.forEach((station, i) => {
    const here = say.at(i);
    const x = placeAlong(station, length, units, here);
    checkOrder(x, before, units, here.at(station.at === undefined ? 'fromTail' : 'at'));
    if (!Number.isNaN(x)) before = Math.max(before, x);

    const half = halfOf(station, here);
    if (half !== undefined && atTip(x, length)) {
      here.error(
        [station.half === undefined ? 'width' : 'half'],
        'a width is given at the very tip',
        'leave it out: the tips belong to nose and tail',
      );
    } else if (half !== undefined) {
      points.push({ x, half });
    }

    if (station.bottom !== undefined && station.thick !== undefined) {
      profile.push({ x, bottom: station.bottom, thickness: station.thick });
      if (station.thick === 0 && !atTip(x, length) && !Number.isNaN(x)) {
        here.error(['thick'], 'the board has no thickness here', 'more than 0, except at the very tips');
      }
    } else if (station.bottom !== undefined || station.thick !== undefined) {
      const [given, lacking] = station.bottom === undefined ? ['thick', 'bottom'] : ['bottom', 'thick'];
      here.error([given!], `"${given}" is given without "${lacking}"`, `measure both here, or leave both out`);
    }

    if (station.section) {
      checkSection(station, units, here.at('section'));
      sections.push({ x, ...toSection(station.section, here.at('section')) });
    }
  });
  return { profile, points, sections };
}

function atTip(x: number, length: number): boolean {
  return x === 0 || x === length;
}

function checkOrder(x: number, before: number, units: Units, say: Say): void {
  if (x > before || Number.isNaN(x)) return;
  const here = printLength(x, units);
  const what =
    x === before
      ? `a second station at ${here}`
      : `the station at ${here} follows one at ${printLength(before, units)}`;
  say.error([], what, 'list the stations once each, from nose to tail');
}

function halfOf(station: StationFile, say: Say): number | undefined {
  if (station.width !== undefined && station.half !== undefined) {
    say.error(['half'], 'the width is given twice, as "width" and as "half"', 'keep one of them');
  }
  return station.half ?? (station.width === undefined ? undefined : station.width / 2);
}

/** Crown and bottom are parts of the thickness, where that is measured at the same station. */
function checkSection(station: StationFile, units: Units, say: Say): void {
  const { crown, roll, vee, apex } = station.section!;
  const thick = station.thick ?? Infinity;
  const rise = roll ?? vee ?? 0;
  if (rise > apex * thick) {
    const most = printLength(apex * thick, units);
    say.error(
      [roll === undefined ? 'vee' : 'roll'],
      'the bottom rises above the widest point of the rail',
      `at most ${most} here`,
    );
  }
  if (crown > (1 - apex) * thick) {
    const most = printLength((1 - apex) * thick, units);
    say.error(['crown'], 'the deck falls below the widest point of the rail', `at most ${most} here`);
  }
}
