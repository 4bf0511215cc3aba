import type { LumberList } from './lumber/lumberList.js';
import type { Stock } from './stockOf.js';

/** The stock as published figures, mm: what comes off the board's blank, what is milled, and what to buy. */
export function publishedStock({ blank, profiles, lumber, billets, unused }: Stock) {
  return {
    blank: blank
      ? {
          placements: blank.fits.map(({ of, placement, slid, bound }) => ({
            strips: of,
            placement,
            slid: slid ?? null,
            bound: bound ?? null,
          })),
          strips: blank.strips.map(({ member, left, right, moved }, i) => ({
            member: member.id,
            left: left ?? null,
            right: right ?? null,
            moved,
            litres: blank.volumes[i]!.amount,
          })),
          least: blank.least,
          short: blank.short,
          cure: blank.cure ?? null,
          slides: blank.slides,
          unfit: blank.unfit,
          width: blank.width,
          sawdust: blank.sawdust ?? null,
        }
      : null,
    profiles: profiles.map(({ member, thickness, outline }) => ({ member: member.id, thickness, outline })),
    lumber: lumber ? publishedList(lumber) : null,
    billets: billets ? publishedList(billets) : null,
    unused,
  };
}

function publishedList({ planks, lacks, cost, boardFeet, waste }: LumberList) {
  return {
    planks: planks.map(({ plank, size, leaves }) => ({
      size,
      length: plank.length,
      width: plank.width,
      thickness: plank.thickness,
      leaves: leaves.map((leaf) =>
        leaf.map(({ laid, at }) => ({
          part: laid.part.name,
          outline: laid.outline.map(([s, z]) => [s + at[0], z + at[1]]),
        })),
      ),
    })),
    lacks,
    cost: cost ?? null,
    boardFeet: boardFeet ?? null,
    waste,
  };
}
