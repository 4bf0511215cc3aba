import { resolve } from 'node:path';

export const TRACKER_ENDING = '.tracker.db';

/** The tracker file beside a job file: `lake-12.yaml` has `lake-12.tracker.db`. */
export function trackerPath(jobFile: string): string {
  return resolve(jobFile).replace(/\.ya?ml$/i, '') + TRACKER_ENDING;
}
