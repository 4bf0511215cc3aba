import type { Patch } from '../../board/mesh.js';
import type { Chamber } from '../../chamber/chamber.js';
import { MM_PER_FOOT } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import { chambersOf } from '../mirror.js';
import { tightest } from '../plan/wallMap.js';

/** Where the board is cut across, and which thin walls are the reason; none at the even distances. */
export interface SectionPlace {
  readonly x: number;
  readonly thin: readonly { readonly chamber: Chamber; readonly patch: Patch }[];
}

/** Distance between sections, mm. */
const EVERY = { mm: 250, in: MM_PER_FOOT } as const;
/** Thin places this near to one another, mm, share a section. */
const TOGETHER = 5;

/** A section every foot or 250 mm, and one at the thinnest wall of each row, nose to tail. */
export function sectionPlaces(plan: Plan): SectionPlace[] {
  const step = EVERY[plan.job.units];
  const even: SectionPlace[] = [];
  for (let x = step; x < plan.board.length; x += step) even.push({ x, thin: [] });
  const places = [...even];
  for (const row of plan.layup.rows) {
    const chambers = chambersOf(plan, row);
    if (chambers.length === 0) continue;
    const chamber = chambers.reduce((a, b) => (tightest(b, plan.asked).spare < tightest(a, plan.asked).spare ? b : a));
    const { patch } = tightest(chamber, plan.asked);
    const x = chamber.at[patch][0];
    const i = places.findIndex((place) => Math.abs(place.x - x) <= TOGETHER && place.thin.length > 0);
    if (i < 0) places.push({ x, thin: [{ chamber, patch }] });
    else places[i] = { x: places[i]!.x, thin: [...places[i]!.thin, { chamber, patch }] };
  }
  return places.sort((a, b) => a.x - b.x);
}
