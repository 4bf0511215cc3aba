import type { Plan } from '../../plan.js';
import { sheetRows, type MirroredRow } from '../mirror.js';
import { seenFromFar } from './farSide.js';

/** Every face that chambers are marked on: each row's own, and its far one where it is routed from both. */
export function faceViews(plan: Plan): { plan: Plan; row: MirroredRow }[] {
  return sheetRows(plan).flatMap((row) => {
    const far = seenFromFar(plan, row);
    return [{ plan, row }, ...(far ? [far] : [])];
  });
}
