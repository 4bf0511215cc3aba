import words from '../../templates/guides.json' with { type: 'json' };
import { printLength } from '../length/length.js';
import type { Plan } from '../plan.js';
import type { TablePage, TableRow } from './pages.js';
import { lengthCell } from './pole.js';
import { printAtLeast, printAtMost } from './rounded.js';
import { say } from './words.js';

/** Which guide each chamber is routed with, and where it is set. */
export function guideSettings(plan: Plan): TablePage {
  const { units } = plan.job;
  const { columns } = words.settings;
  const settings = new Map(plan.routing.settings.map((setting) => [setting.chamber, setting]));
  return {
    kind: 'table',
    title: words.settings.title,
    notes: words.settings.notes,
    columns: [
      { title: columns.chamber, kind: 'text' },
      { title: columns.guide, kind: 'text' },
      { title: columns.along, kind: 'number' },
      { title: columns.up, kind: 'number' },
      { title: columns.turn, kind: 'text' },
      { title: columns.deep, kind: 'number' },
    ],
    rows: plan.chambers.map(({ id, contour, depth }): TableRow => {
      const set = settings.get(id);
      const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
      const s = set?.s ?? middle(contour.map(({ x }) => x));
      const z = set?.z ?? middle(contour.map(({ y }) => y));
      return {
        kind: 'row',
        cells: [
          id,
          set?.guide ?? words.settings.own,
          lengthCell(s, units),
          lengthCell(z, units),
          set ? `${set.tiltInDegrees.toFixed(1)}°` : '',
          lengthCell(depth[1], units),
        ],
      };
    }),
  };
}

/** Row by row: where the router stands, how deep, and the stop of each pass. */
export function setUpTable(plan: Plan): TablePage {
  const { units, routing, chambers } = plan.job;
  const { columns } = words.setUp;
  const print = (mm: number) => printLength(mm, units);
  const values = {
    cutter: print(chambers.cutterDiameter),
    bush: print(routing.bush),
    stock: print(routing.guideStock),
  };
  return {
    kind: 'table',
    title: words.setUp.title,
    notes: [...words.setUp.notes.map((note) => say(note, values)), words.care],
    columns: [
      { title: columns.row, kind: 'text' },
      { title: columns.from, kind: 'text' },
      { title: columns.deep, kind: 'number' },
      { title: columns.stops, kind: 'text' },
      { title: columns.reach, kind: 'text' },
    ],
    rows: plan.routing.rows
      .filter((row) => row.chambers.length > 0)
      .map(({ row, from, cut, stops, needs }): TableRow => {
        // Too deep spoils a wall; halves that stop short do not meet.
        const exactly = (mm: number) => (from.length > 1 ? printAtLeast : printAtMost)(mm, units);
        return {
          kind: 'row',
          cells: [
            row,
            from.length > 1 ? say(words.setUp.both, { from: from.join(' + ') }) : from.join(),
            { value: cut, text: exactly(cut) },
            [...stops.slice(0, -1).map(print), exactly(stops.at(-1)!)].join(', '),
            needs === undefined ? words.setUp.reaches : say(words.setUp.needs, { needs: print(needs) }),
          ],
        };
      }),
  };
}

/** What every number of guides loses at best; only where guides are shared. */
export function guideCurve(plan: Plan): TablePage {
  const { columns } = words.curve;
  return {
    kind: 'table',
    title: words.curve.title,
    notes: words.curve.notes,
    columns: [
      { title: columns.guides, kind: 'number' },
      { title: columns.lost, kind: 'number' },
      { title: columns.bound, kind: 'number' },
    ],
    rows: plan.routing.curve.map(({ guides, lost, bound }): TableRow => ({
      kind: 'row',
      cells: [guides, litres(lost), litres(bound)],
    })),
  };
}

function litres(value: number) {
  return { value, text: value.toFixed(2) };
}
