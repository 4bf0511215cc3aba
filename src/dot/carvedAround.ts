import type { CarvedRow, Carving, DrawnRow } from '../chamber/chambers.js';
import type { IsFree } from '../chamber/enlarge.js';
import { isOpenAt } from '../chamber/onRow.js';
import type { DrawnPlace, RowPlace, DrawnChamber } from '../chamber/row.js';
import { lineOnRow, type Keep } from './around.js';
import type { GlueLoss } from './dot.js';
import { placeName } from '../job/names.js';
import { gapTo } from './spot.js';

/** Rounds of drawing a place: a split for one dot may uncover another that was swallowed. */
const ROUNDS = 4;

/** The rows as carved, and what glue cost them. */
export interface CarvedAround {
  readonly rows: readonly CarvedRow[];
  readonly losses: readonly GlueLoss[];
}

/** Proves every place, drawn again around the glue that comes too near to it: no other place is touched. */
export function carvedAround(
  rows: readonly DrawnRow[],
  { keepOuts }: Carving,
  keeps: readonly Keep[],
  clearance: number,
): CarvedAround {
  const losses: GlueLoss[] = [];
  const carved = rows.map(({ carving, drawings }): CarvedRow => {
    const here = keeps.filter(({ at }) => at.row.id === carving.row.id);
    return {
      carving,
      places: drawings.map((drawing) => {
        const offenders = new Set<Keep>();
        const isClear = (shapes: readonly DrawnChamber[]): boolean => {
          const more = here.filter((keep) => !offenders.has(keep) && offends(shapes, keep, clearance));
          more.forEach((keep) => offenders.add(keep));
          return more.length === 0;
        };
        const redrawn = (): DrawnPlace => {
          const around = here.filter((keep) => !keep.swallowed || offenders.has(keep));
          return carving.draw(drawing.slot, [...keepOuts, ...around.map(({ obstacle }) => obstacle)]);
        };
        const isFree: IsFree = (shape) => !here.some((keep) => offends([shape], keep, clearance));
        const prove = (each: DrawnPlace) => carving.prove(each, isFree);
        const place = clearPlace(drawing, prove, isClear, redrawn);
        if (offenders.size > 0) {
          const before = litres(drawing.shapes);
          losses.push({
            row: carving.row.id,
            place: placeName(carving.row.id, drawing.slot.place),
            by: [...offenders].map(({ spot }) => spot.name),
            before,
            after: Math.min(before, litres(place.chambers)),
          });
        }
        return place;
      }),
    };
  });
  return { rows: carved, losses };
}

/**
 * Proves a place once what is drawn there is clear of glue, and draws it again where the proof has let it grow too
 * near.
 */
function clearPlace(
  first: DrawnPlace,
  prove: (drawing: DrawnPlace) => RowPlace,
  isClear: (shapes: readonly DrawnChamber[]) => boolean,
  redrawn: () => DrawnPlace,
): RowPlace {
  let drawing = first;
  for (let round = 0; round < ROUNDS; round++) {
    if (isClear(drawing.shapes)) {
      const place = prove(drawing);
      if (isClear(place.chambers)) return place;
    }
    drawing = redrawn();
  }
  return prove(drawing);
}

function litres(shapes: readonly DrawnChamber[]): number {
  return shapes.reduce((sum, { volume }) => sum + volume, 0);
}

/** Gaps that differ by less, mm, are the same but for rounding. */
const ROUNDING = 1e-6;

/** Whether one of the chambers comes nearer to glue than the clearance, unless it swallows it as allowed. */
export function offends(
  shapes: readonly Pick<DrawnChamber, 'profile' | 'depth'>[],
  keep: Keep,
  clearance: number,
): boolean {
  const { spot, at, swallowed, obstacle } = keep;
  return shapes.some(({ profile, depth }) => {
    if (depth[1] <= obstacle.beyond || !isBeside(profile, keep)) return false;
    const { gap, inside } = gapTo(profile, lineOnRow(spot, at));
    const enough = gap >= spot.radius + clearance - ROUNDING;
    if (!inside) return !enough;
    const ends = [spot.from[0], spot.to[0]];
    const comesOut = isOpenAt(at, depth[1], Math.min(...ends) - spot.radius, Math.max(...ends) + spot.radius);
    return !(enough && swallowed && comesOut);
  });
}

/** Whether some of a profile lies where glue with its clearance is, along the face. */
function isBeside(profile: DrawnChamber['profile'], { obstacle: { blocked } }: Keep): boolean {
  let [before, behind] = [false, false];
  for (const pair of profile) {
    if (pair[0] < blocked.to) before = true;
    if (pair[0] > blocked.from) behind = true;
  }
  return before && behind;
}
