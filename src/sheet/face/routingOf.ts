import type { Chamber } from '../../chamber/chamber.js';
import type { Plan } from '../../plan.js';
import type { ChamberRouting } from '../../rout/rout.js';

/** How one chamber is routed. */
export function routingOf({ routing }: Plan, { id, row }: Pick<Chamber, 'id' | 'row'>): ChamberRouting {
  return routing.rows.find((each) => each.row === row)!.chambers.find(({ chamber }) => chamber === id)!;
}
