import type Database from 'libsql';
import type { Content, TakenOver } from '../content.js';
import { eventKeyed, eventNumbered, insertEvent, lastNumber } from './eventLog.js';
import { joined } from '../joined.js';
import { writePhoto } from './photoShelf.js';
import { allPlans, insertPlan, nextPlanNumber } from './planLog.js';
import { writeSessionRow } from './sessionBook.js';
import { readSetting, writeSetting } from './setting.js';

/** Adds what another tracker holds and this one does not. To be called within a transaction. */
export function takeOver(db: Database.Database, content: Content): TakenOver {
  const last = lastNumber(db);
  const { events, plans, missing } = joined(
    {
      keyed: (client, seq) => eventKeyed(db, client, seq),
      has: (number) => eventNumbered(db, number) !== undefined,
      last,
      plans: allPlans(db),
      nextPlan: nextPlanNumber(db),
    },
    content,
  );
  for (const plan of plans) insertPlan(db, plan);
  for (const event of events) insertEvent(db, event);
  let photos = 0;
  for (const photo of content.photos) photos += writePhoto(db, photo, photo.received).isNew ? 1 : 0;
  for (const row of content.sessions) writeSessionRow(db, row);
  for (const [name, value] of content.settings) if (readSetting(db, name) === undefined) writeSetting(db, name, value);
  if (last === 0 && content.highest > lastNumber(db)) {
    // The numbers of lost entries are not given again.
    db.exec("DELETE FROM sqlite_sequence WHERE name = 'event'");
    db.prepare("INSERT INTO sqlite_sequence (name, seq) VALUES ('event', ?)").run([content.highest]);
  }
  return { events: events.length, photos, missing };
}
