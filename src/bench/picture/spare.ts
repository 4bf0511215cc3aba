import type { Result } from '../../view/result.js';
import type { Patch } from '../../board/mesh.js';

type Chamber = Result['chambers'][number];

/** How much more than asked is left, in steps a builder can act on; each has its own pattern. */
export const SPARE_STEPS = [
  { name: 'thin', from: -Infinity },
  { name: 'none', from: 0 },
  { name: 'little', from: 1 },
  { name: 'some', from: 5 },
  { name: 'much', from: 20 },
] as const;

export type SpareName = (typeof SPARE_STEPS)[number]['name'];

/** What a wall has beyond what was asked, tolerance included, mm. Below 0 the plan would be wrong. */
export function spareOf({ wall }: Pick<Chamber, 'wall'>, asked: Result['asked'], which: Patch): number {
  return wall[which] - asked[which];
}

export function spareStep(spare: number): SpareName {
  return SPARE_STEPS.findLast(({ from }) => spare >= from)!.name;
}
