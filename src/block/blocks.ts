import type { Material } from '../job/spec/material.js';
import { support } from '../contour/support.js';
import { areaOf } from '../contour/area.js';
import type { Chamber } from '../chamber/chamber.js';
import type { Row } from '../layup/layup.js';
import type { GuideSetting } from '../rout/rout.js';
import type { Block, MadeBlock } from './block.js';
import { fitted, type Fit } from './fit.js';
import { proudOf } from './proud.js';

/** Blocks as their chambers are. */
const EXACT: Fit = { fit: 0, corners: 'eased', cutterRadius: 0 };

/**
 * The blocks that fill the chambers, one for each, in the same order.
 * @param settings which chambers share a guide, and so their blocks an outline
 * @param rows of the chambers, for what stands proud of a far face
 */
export function blocksOf(
  chambers: readonly Chamber[],
  fill: Material,
  fit: Fit = EXACT,
  settings: readonly Pick<GuideSetting, 'chamber' | 'guide'>[] = [],
  rows: readonly Row[] = [],
): Block[] {
  const guides = new Map(settings.map(({ chamber, guide }) => [chamber, guide]));
  // Chambers that are mirror images share their profile, and what is made for it.
  const known = new Map<Chamber['profile'], Pick<Block, 'made'> & MadeBlock>();
  const filling = (chamber: Chamber) => {
    const s = chamber.profile.map(([each]) => each);
    const z = chamber.profile.map(([, each]) => each);
    const exact: MadeBlock = {
      outline: chamber.contour,
      length: Math.max(...s) - Math.min(...s),
      height: Math.max(...z) - Math.min(...z),
      thickness: chamber.depth[1] - chamber.depth[0],
      volume: chamber.volume,
      weight: (chamber.volume / 1000) * fill.density,
    };
    return { ...exact, made: madeOf(exact, fit, fill) };
  };
  return chambers.map((chamber): Block => {
    const { id, row, profile } = chamber;
    const filled = known.get(profile) ?? filling(chamber);
    known.set(profile, filled);
    const guide = guides.get(id);
    const proud = proudOf(
      chamber,
      rows.find((each) => each.id === row),
    );
    return { id, row, ...filled, ...(guide && { guide }), ...(proud && { proud }) };
  });
}

/**
 * The fit is around the outline; the thickness is the chamber's depth all over, so that a block ends flush with the
 * face it is put in from. Where its chamber goes through a flared piece it weighs more than what is left of it in the
 * board.
 */
function madeOf(exact: MadeBlock, fit: Fit, fill: Material): MadeBlock {
  const outline = fitted(exact.outline, fit);
  const volume = (areaOf(outline) * exact.thickness) / 1e6;
  const cut = { volume, weight: (volume / 1000) * fill.density };
  if (outline === exact.outline) return { ...exact, ...cut };
  return {
    outline,
    length: support(outline, 0) + support(outline, Math.PI),
    height: support(outline, Math.PI / 2) + support(outline, -Math.PI / 2),
    thickness: exact.thickness,
    ...cut,
  };
}
