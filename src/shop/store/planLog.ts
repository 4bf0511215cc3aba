import type Database from 'libsql';
import type { TrackedBlock } from '../trackedBlock.js';

/** A plan as it once was. */
export interface PlanRecord {
  /** 1 and up, in the order the plans were first seen. */
  readonly number: number;
  readonly recorded: number;
  readonly job: string;
  readonly blocks: readonly TrackedBlock[];
}

/** Records the plan unless the newest one says the same. To be called within a transaction. */
export function writePlan(
  db: Database.Database,
  job: string,
  blocks: readonly TrackedBlock[],
  now: number,
): PlanRecord {
  const newest = newestPlan(db);
  const written = JSON.stringify(blocks);
  if (newest && newest.job === job && JSON.stringify(newest.blocks) === written) return newest;
  db.prepare('INSERT INTO plan (recorded, job, blocks) VALUES (?, ?, ?)').run([now, job, written]);
  return newestPlan(db)!;
}

export function newestPlan(db: Database.Database): PlanRecord | undefined {
  return asRecord(db.prepare('SELECT * FROM plan ORDER BY number DESC LIMIT 1').get([]));
}

export function allPlans(db: Database.Database): PlanRecord[] {
  return db
    .prepare('SELECT * FROM plan ORDER BY number')
    .all([])
    .map((row) => asRecord(row)!);
}

export function planNumbered(db: Database.Database, number: number): PlanRecord | undefined {
  return asRecord(db.prepare('SELECT * FROM plan WHERE number = ?').get([number]));
}

function asRecord(row: unknown): PlanRecord | undefined {
  if (row === undefined) return undefined;
  const { number, recorded, job, blocks } = row as { number: number; recorded: number; job: string; blocks: string };
  return { number, recorded, job, blocks: JSON.parse(blocks) as TrackedBlock[] };
}
