import type { StoredEvent } from '../log/event.js';
import type { LogThere } from './delivered.js';
import { fieldsOf, isSame, type EventFields } from './eventRow.js';
import { isSamePlan, type PlanRecord } from './planRecord.js';
import type { Content } from './content.js';

/** What a store holds that another is joined to. */
export interface Here extends LogThere {
  readonly has: (number: number) => boolean;
  /** Oldest first. */
  readonly plans: readonly PlanRecord[];
  /** The number that a new plan would get. */
  readonly nextPlan: number;
}

/** What a store must add to hold all that another one holds. */
export interface Joined {
  readonly events: readonly StoredEvent[];
  readonly plans: readonly PlanRecord[];
  /** Numbers given to events of which nothing is left. */
  readonly missing: readonly number[];
}

/**
 * What another store holds and this one does not: each event once, by the key it has had since it was made, and under
 * its own number where that is free.
 */
export function joined(here: Here, content: Content): Joined {
  const { plans, places } = joinedPlans(here, content);
  const fresh = new Map<string, EventFields>();
  const keyed = (client: string, seq: number) => here.keyed(client, seq) ?? fresh.get(`${client} ${seq}`);
  const taken = new Set<number>();
  let { last } = here;
  const events = content.events.flatMap((event): StoredEvent[] => {
    const known = keyed(event.client, event.seq);
    // Two phones that took the same name for themselves: both did what they say.
    const client = known ? `${event.client}-again`.slice(-64) : event.client;
    if (known && (isSame(known, event) || keyed(client, event.seq))) return [];
    const isFree = !here.has(event.number) && !taken.has(event.number);
    const number = isFree ? event.number : last + 1;
    const one = { ...event, client, number, plan: places.get(event.plan) ?? event.plan };
    taken.add(number);
    last = Math.max(last, number);
    fresh.set(`${client} ${event.seq}`, fieldsOf(one));
    return [one];
  });
  const there = new Set(content.events.map(({ number }) => number));
  const missing = Array.from({ length: content.highest }, (_, i) => i + 1).filter((number) => !there.has(number));
  return { events, plans, missing };
}

/** The plans that are new, and where each plan of the other store is found in this one. */
function joinedPlans(
  { plans: here, nextPlan }: Here,
  { plans, events }: Content,
): { readonly plans: readonly PlanRecord[]; readonly places: ReadonlyMap<number, number> } {
  const all = [...here];
  const fresh: PlanRecord[] = [];
  const places = new Map<number, number>();
  let next = nextPlan;
  // Numbers of plans that are lost, and that events still speak of, are not given again.
  const used = events.reduce((most, { plan }) => Math.max(most, plan), 0);
  for (const plan of plans) {
    const same = all.find((one) => isSamePlan(one, plan));
    const isFree = !all.some(({ number }) => number === plan.number);
    const number = same?.number ?? (isFree ? plan.number : Math.max(next, used + 1));
    places.set(plan.number, number);
    if (same) continue;
    fresh.push({ ...plan, number });
    all.push({ ...plan, number });
    next = Math.max(next, number + 1);
  }
  return { plans: fresh, places };
}
