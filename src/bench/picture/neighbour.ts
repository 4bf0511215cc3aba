import { choose } from './choose.js';
import type { Bench } from '../state/bench.js';
import { chambersInPlan } from '../../view/chamberInPlan.js';

/** Goes from the chosen chamber to the next one along its row, or to the nearest one of a neighbouring row. */
export function goToNeighbour(bench: Bench, rows: -1 | 0 | 1, along: -1 | 0 | 1): void {
  const { shown, chamber, row, x } = bench.now;
  if (!shown) return;
  const places = chambersInPlan(shown.layup.rows, shown.result.chambers);
  const ids = shown.result.rows.map(({ id }) => id).filter((id) => places.some((p) => p.chamber.row === id));
  const now = places.find((p) => p.chamber.id === chamber);
  const from = now?.middle[0] ?? x;
  const wanted = ids[Math.min(Math.max(ids.indexOf(row ?? '') + rows, 0), ids.length - 1)];
  const inRow = places.filter((p) => p.chamber.row === wanted);
  const nearest = inRow.toSorted((a, b) => Math.abs(a.middle[0] - from) - Math.abs(b.middle[0] - from))[0];
  const next = now && rows === 0 ? (inRow[inRow.indexOf(now) + along] ?? now) : nearest;
  if (next) choose(bench, next.chamber.id);
}
