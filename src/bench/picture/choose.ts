import type { Bench } from '../state/bench.js';
import { chambersInPlan } from '../../view/chamberInPlan.js';

/** Chooses a chamber everywhere: its row is shown, and the cross-section goes through its middle. */
export function choose(bench: Bench, id: string): void {
  const { shown } = bench.now;
  const place =
    shown && chambersInPlan(shown.layup.rows, shown.result.chambers).find(({ chamber }) => chamber.id === id);
  if (place) bench.show({ chamber: id, row: place.chamber.row, x: place.middle[0], said: '' });
}
