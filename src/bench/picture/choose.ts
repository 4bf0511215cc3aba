import type { Bench } from '../bench.js';
import { chambersInPlan } from './inPlan.js';

/** Chooses a chamber everywhere: its row is shown, and the cross-section goes through its middle. */
export function choose(bench: Bench, id: string): void {
  const { shown } = bench.now;
  const place = shown && chambersInPlan(shown.result).find(({ chamber }) => chamber.id === id);
  if (place) bench.show({ chamber: id, row: place.chamber.row, x: place.middle[0], said: '' });
}
