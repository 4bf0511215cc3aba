import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Plan } from '../../plan.js';
import { HEEL, underHeelOf, type UnderHeel } from '../../weigh/underHeel.js';
import { say, WORDS } from '../../words/say.js';
import type { Cell, TablePage } from '../pages.js';
import { columnsOf, row } from '../table.js';
import { WEIGHT_WORDS } from './weightsWords.js';

const W = WEIGHT_WORDS.heel;

/**
 * How the deck bears the edge of a heel: over the weakest chamber, the thinnest skin, and the weakest of each row, in
 * one line for rows that share it.
 */
export function heelTables({ layup, chambers, job }: Plan): TablePage[] {
  const places = underHeelOf(layup, chambers, job);
  if (places.length === 0) return [];
  const print = (mm: number) => printLength(mm, job.units);
  const line = (what: string, { over, at, skin, sides, empty, filled, strain }: UnderHeel) =>
    row(
      what,
      over.join(WORDS.joinWith),
      { value: at[0], text: print(at[0]) },
      { value: skin, text: printAs('there', skin, job.units) },
      { value: sides[0], text: sides.map(print).join(' × ') },
      rounded(empty, 2),
      rounded(filled, 2),
      rounded(100 * strain, 1),
    );
  const weakest = (of: readonly UnderHeel[]) => of.reduce((a, b) => (b.empty > a.empty ? b : a));
  const rowOf = new Map(chambers.map((chamber) => [chamber.id, chamber.row]));
  const inRow = (id: string) => places.filter(({ chamber }) => rowOf.get(chamber) === id);
  const byPlace = new Map<string, string[]>();
  for (const { id } of layup.rows.filter(({ id }) => inRow(id).length > 0)) {
    const place = weakest(inRow(id)).over.join();
    byPlace.set(place, [...(byPlace.get(place) ?? []), id]);
  }
  const { what, chambers: over, x, skin, sides, empty, filled, strain } = W.columns;
  return [
    {
      kind: 'table',
      title: W.title,
      notes: [say(W.load, { load: HEEL.load, wide: print(2 * HEEL.radius) }), ...W.notes],
      columns: columnsOf(
        [what, 'text'],
        [over, 'text'],
        [x, 'number'],
        [skin, 'number'],
        [sides, 'number'],
        [empty, 'number'],
        [filled, 'number'],
        [strain, 'number'],
      ),
      rows: [
        line(W.weakest, weakest(places)),
        line(
          W.thinnest,
          places.reduce((a, b) => (b.skin < a.skin ? b : a)),
        ),
        ...[...byPlace.values()].map((rows) =>
          line(say(W.rows, { rows: rows.join(WORDS.joinWith) }), weakest(inRow(rows[0]!))),
        ),
      ],
    },
  ];
}

const rounded = (value: number, digits: number): Cell => ({ value, text: value.toFixed(digits) });
