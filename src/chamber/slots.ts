import type { ChamberSpec } from '../job/job.js';
import type { Row } from '../layup/layup.js';

/** One place of a row's grid: the longest a chamber may be there, `s` from and to, mm. */
export interface Slot {
  readonly place: number;
  readonly centre: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The places of a row from nose to tail: centres at `datum + (k + stagger · parity) · pitch`, for all whole k, that
 * fall on the board. Counted from the nose, so that a place keeps its number whatever becomes of its neighbours.
 */
export function slotsOf(row: Row, spec: ChamberSpec, length: number): Slot[] {
  const { pitch, datum, stagger, web } = spec;
  const shift = datum + stagger * row.parity * pitch;
  const first = Math.floor(-shift / pitch) + 1;
  const slots: Slot[] = [];
  for (let k = first; shift + k * pitch < length; k++) {
    const centre = shift + k * pitch;
    slots.push({ place: slots.length + 1, centre, from: centre - (pitch - web) / 2, to: centre + (pitch - web) / 2 });
  }
  return slots;
}
