import type Database from 'libsql';
import { eventKeyed, eventNumbered, insertEvent, isSame, lastNumber } from './eventLog.js';
import { writePhoto } from './photoShelf.js';
import { allPlans, insertPlan, isSamePlan, nextPlanNumber } from './planLog.js';
import type { Content } from './recovered.js';
import { writeSessionRow } from './sessionBook.js';
import { readSetting, writeSetting } from './setting.js';

/** How much of a tracker was new to the one that took it over. */
export interface TakenOver {
  readonly events: number;
  readonly photos: number;
  /** Numbers given to events of which nothing is left. */
  readonly missing: readonly number[];
}

/**
 * Adds what another tracker holds and this one does not: each event once, by the key it has had since it was made, and under its own
 * number where that is free. To be called within a transaction.
 */
export function takeOver(db: Database.Database, content: Content): TakenOver {
  const isNew = lastNumber(db) === 0;
  const plans = takePlans(db, content);
  let events = 0;
  for (const event of content.events) {
    const known = eventKeyed(db, event.client, event.seq);
    // Two phones that took the same name for themselves: both did what they say.
    const client = known ? `${event.client}-again`.slice(-64) : event.client;
    if (known && (isSame(known, event) || eventKeyed(db, client, event.seq))) continue;
    const free = eventNumbered(db, event.number) === undefined;
    insertEvent(db, {
      ...event,
      client,
      number: free ? event.number : lastNumber(db) + 1,
      plan: plans.get(event.plan) ?? event.plan,
    });
    events++;
  }
  let photos = 0;
  for (const photo of content.photos) photos += writePhoto(db, photo, photo.received).isNew ? 1 : 0;
  for (const row of content.sessions) writeSessionRow(db, row);
  for (const [name, value] of content.settings) if (readSetting(db, name) === undefined) writeSetting(db, name, value);
  const there = new Set(content.events.map(({ number }) => number));
  const missing = Array.from({ length: content.highest }, (_, i) => i + 1).filter((number) => !there.has(number));
  if (isNew && content.highest > lastNumber(db)) {
    // The numbers of lost entries are not given again.
    db.exec("DELETE FROM sqlite_sequence WHERE name = 'event'");
    db.prepare("INSERT INTO sqlite_sequence (name, seq) VALUES ('event', ?)").run([content.highest]);
  }
  return { events, photos, missing };
}

/** Where each plan of the other tracker is found in this one. */
function takePlans(db: Database.Database, { plans, events }: Content): ReadonlyMap<number, number> {
  const here = allPlans(db);
  const places = new Map<number, number>();
  // Numbers of plans that are lost, and that events still speak of, are not given again.
  const used = events.reduce((most, { plan }) => Math.max(most, plan), 0);
  for (const plan of plans) {
    const same = here.find((one) => isSamePlan(one, plan));
    const isFree = !here.some(({ number }) => number === plan.number);
    const number = same?.number ?? (isFree ? plan.number : Math.max(nextPlanNumber(db), used + 1));
    if (!same) insertPlan(db, { ...plan, number });
    if (!same) here.push({ ...plan, number });
    places.set(plan.number, number);
  }
  return places;
}
