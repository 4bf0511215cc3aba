import { columnsOf } from '../table.js';
import words from '../../../templates/guides.json' with { type: 'json' };
import type { Plan } from '../../plan.js';
import type { TablePage, TableRow } from '../pages.js';
import { lengthCell } from '../face/pole.js';
import { depthWords } from '../face/depthWords.js';

/** Which guide each chamber is routed with, and where it is set. */
export function guideSettings(plan: Plan): TablePage {
  const { units } = plan.job;
  const { columns } = words.settings;
  const settings = new Map(plan.routing.settings.map((setting) => [setting.chamber, setting]));
  return {
    kind: 'table',
    title: words.settings.title,
    notes: words.settings.notes,
    columns: columnsOf(
      [columns.chamber, 'text'],
      [columns.guide, 'text'],
      [columns.along, 'number'],
      [columns.up, 'number'],
      [columns.turn, 'text'],
      [columns.deep, 'text'],
    ),
    rows: plan.chambers.map((chamber): TableRow => {
      const set = settings.get(chamber.id);
      const row = plan.layup.rows.find(({ id }) => id === chamber.row)!;
      return {
        kind: 'row',
        cells: [
          chamber.id,
          set?.guide ?? words.settings.own,
          set ? lengthCell(set.s, units) : '',
          set ? lengthCell(set.overBottom, units) : '',
          set ? `${set.tiltInDegrees.toFixed(1)}°` : '',
          depthWords(chamber, row, plan),
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
    columns: columnsOf([columns.guides, 'number'], [columns.lost, 'number'], [columns.bound, 'number']),
    rows: plan.routing.curve.map(({ guides, lost, bound }): TableRow => ({
      kind: 'row',
      cells: [guides, litres(lost), litres(bound)],
    })),
  };
}

function litres(value: number) {
  return { value, text: value.toFixed(2) };
}
