import type { Content } from '../content.js';
import { logPart, type EventFields } from '../eventRow.js';
import { rowsOn, textIn, type Cell, type Pages } from './pages.js';
import { photoTypeOf, photoName, type Photo } from '../photo.js';
import { planOfRow, type PlanFields, type PlanRecord } from '../planRecord.js';
import { sealOf } from './seal.js';

/**
 * Every row that is as it was written, from whichever pages can still be read: a row is known by its shape and believed
 * by its check sum, so it does not matter what became of the pages that pointed to it. Rows of a version without check
 * sums are taken where their shape is right.
 */
export function recovered(pages: Pages): Content {
  const events = new Map<number, EventFields>();
  const plans = new Map<number, PlanRecord>();
  const photos = new Map<string, Photo & { received: number }>();
  const sessions = new Map<string, readonly [string, number, number]>();
  const settings = new Map<string, readonly [string, string]>();
  let highest = 0;
  for (let number = 1; number <= pages.length; number++) {
    for (const { rowid, cells } of rowsOn(number, pages)) {
      const event = eventIn(rowid, cells);
      const plan = event ? undefined : planIn(rowid, cells);
      const photo = photoIn(cells);
      const session = sessionIn(cells);
      const setting = settingIn(cells);
      const given = numberGiven(cells);
      if (event) events.set(event[0], event);
      else if (plan) plans.set(plan.number, plan);
      else if (photo) photos.set(photoName(photo.bytes), photo);
      else if (session) sessions.set(session[0], session);
      else if (setting) settings.set(setting[0], setting);
      else if (given !== undefined) highest = Math.max(highest, given);
    }
  }
  const rows = [...events.values()].sort(([a], [b]) => a - b);
  const last = rows.at(-1)?.[0] ?? 0;
  return {
    events: rows.length > 0 ? logPart(rows).events : [],
    plans: [...plans.values()].sort((a, b) => a.number - b.number),
    photos: [...photos.values()],
    sessions: [...sessions.values()],
    settings: [...settings.values()],
    // A number far beyond what was found is damage too.
    highest: highest > last + MOST_MISSING ? last : Math.max(highest, last),
  };
}

/** More entries than this are not believed to be missing at the end. */
const MOST_MISSING = 1_000_000;
const [EVENT, PLAN] = [11, 4];

function eventIn(rowid: number, cells: readonly Cell[]): EventFields | undefined {
  if (cells.length !== EVENT && cells.length !== EVENT + 1) return undefined;
  const [key, client, seq, seen, plan, at, who, via, what, received, happened, seal] = cells;
  const texts = [client, who, via, what].map((cell) => textIn(cell));
  const numbers = [rowid, seq, seen, plan, at, received, happened];
  if (key !== null || texts.includes(undefined) || !numbers.every(Number.isSafeInteger)) return undefined;
  const fields = [
    rowid,
    texts[0],
    seq,
    seen,
    plan,
    at,
    texts[1],
    texts[2],
    texts[3],
    received,
    happened,
  ] as never as EventFields;
  if (cells.length === EVENT + 1) return sealOf(fields) === seal ? fields : undefined;
  return rowid > 0 && isJson(fields[8]) && ['page', 'command', 'csv'].includes(fields[7]) ? fields : undefined;
}

function planIn(rowid: number, cells: readonly Cell[]): PlanRecord | undefined {
  if (cells.length !== PLAN && cells.length !== PLAN + 1) return undefined;
  const [key, recorded, job, blocks, seal] = cells;
  const fields = [rowid, recorded, textIn(job), textIn(blocks)] as never as PlanFields;
  if (key !== null || typeof recorded !== 'number' || fields.includes(undefined as never)) return undefined;
  if (cells.length === PLAN + 1 && sealOf(fields) !== seal) return undefined;
  return rowid > 0 && isJson(fields[3]) && Array.isArray(JSON.parse(fields[3])) ? planOfRow(fields) : undefined;
}

/** A photo is believed by its name, which is the sum of its bytes. */
function photoIn([name, type, bytes, received, ...more]: readonly Cell[]): (Photo & { received: number }) | undefined {
  if (more.length > 0 || typeof received !== 'number' || bytes === null || typeof bytes !== 'object') return undefined;
  if (!('blob' in bytes) || textIn(name) !== photoName(bytes.blob)) return undefined;
  const written = textIn(type) as Photo['type'];
  const kind = photoTypeOf(bytes.blob) ?? written;
  return { type: kind, bytes: bytes.blob, received };
}

/** A session whose name was damaged lets nobody in. */
function sessionIn([hash, began, used, ...more]: readonly Cell[]): readonly [string, number, number] | undefined {
  const name = textIn(hash);
  if (more.length > 0 || typeof began !== 'number' || typeof used !== 'number') return undefined;
  return name !== undefined && /^[0-9a-f]{64}$/.test(name) ? [name, began, used] : undefined;
}

function settingIn([name, value, seal, ...more]: readonly Cell[]): readonly [string, string] | undefined {
  const [key, text] = [textIn(name), textIn(value)];
  if (more.length > 0 || key === undefined || text === undefined) return undefined;
  return seal === undefined || sealOf([key, text]) === seal ? [key, text] : undefined;
}

/** SQLite's own note of the highest number given (sqlite.org/autoinc.html). */
function numberGiven([name, seq, ...more]: readonly Cell[]): number | undefined {
  return more.length === 0 && textIn(name) === 'event' && typeof seq === 'number' && seq > 0 ? seq : undefined;
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
