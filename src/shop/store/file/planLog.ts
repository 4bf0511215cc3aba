import type Database from 'libsql';
import { PLAN_COLUMNS, planOfRow, type PlanFields, type PlanRecord } from '../planRecord.js';
import { Damaged, rowsOf } from './rowsOf.js';
import { sealOf } from './seal.js';

/**
 * Every plan recorded, oldest first.
 *
 * @throws {@link Damaged} where a row is not as it was written
 */
export function allPlans(db: Database.Database): PlanRecord[] {
  return rowsOf(db, `${PLAN_COLUMNS}, seal`, 'plan ORDER BY number').map((row) => {
    const fields = row.slice(0, -1) as unknown as PlanFields;
    if (sealOf(fields) !== row.at(-1)) throw new Damaged(`Plan ${fields[0]} is not as it was written.`);
    return planOfRow(fields);
  });
}

/** Keeps a plan under its own number. */
export function insertPlan(db: Database.Database, { number, recorded, job, blocks }: PlanRecord): void {
  const row: PlanFields = [number, recorded, job, JSON.stringify(blocks)];
  db.prepare(`INSERT INTO plan (${PLAN_COLUMNS}, seal) VALUES (?,?,?,?,?)`).run([...row, sealOf(row)]);
}

/** Number of the newest plan recorded, 0 where there is none. */
export function newestPlanNumber(db: Database.Database): number {
  return (db.prepare('SELECT max(number) AS newest FROM plan').get([]) as { newest: number | null }).newest ?? 0;
}

/** The number a new plan gets: never one that was given before. */
export function nextPlanNumber(db: Database.Database): number {
  const { seq } = db
    .prepare("SELECT max(CAST(seq AS INTEGER)) AS seq FROM sqlite_sequence WHERE name = 'plan'")
    .get([]) as {
    seq: number | null;
  };
  return (seq ?? 0) + 1;
}

/** Gives every row the check sum it lacks. */
export function sealPlans(db: Database.Database): void {
  const seal = db.prepare('UPDATE plan SET seal = ? WHERE number = ?');
  for (const row of rowsOf(db, PLAN_COLUMNS, 'plan') as unknown as PlanFields[]) seal.run([sealOf(row), row[0]]);
}
