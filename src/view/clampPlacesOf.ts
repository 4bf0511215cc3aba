import { clampPlaces } from '../block/glue/batches.js';
import { MM_PER_INCH, type Units } from '../length/units.js';
import type { GluedFace } from './gluedFaces.js';

/** A clamp is set to no finer than this, mm. */
const CLAMP_STEP = { mm: 10, in: MM_PER_INCH / 2 } as const;

/** Evenly along joints that are clamped together, the middle one first, then outward by turns, mm from the nose tip. */
export function clampPlacesOf(joints: readonly GluedFace[], spacing: number, units: Units): number[] {
  const step = CLAMP_STEP[units];
  const [from, to] = [Math.min(...joints.map((each) => each.from)), Math.max(...joints.map((each) => each.to))];
  const middle = (from + to) / 2;
  return clampPlaces([{ from, to }], Math.max(step, spacing - step))
    .map((x) => Math.round(x / step) * step)
    .sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b);
}
