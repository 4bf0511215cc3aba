import type { Chamber } from '../chamber/chamber.js';
import type { Material } from '../job/job.js';
import type { Block } from './block.js';

/** The blocks that fill the chambers exactly, one for each, in the same order. */
export function blocksOf(chambers: readonly Chamber[], fill: Material): Block[] {
  return chambers.map((chamber): Block => {
    const s = chamber.profile.map(([each]) => each);
    const z = chamber.profile.map(([, each]) => each);
    return {
      id: chamber.id,
      row: chamber.row,
      outline: chamber.contour,
      length: Math.max(...s) - Math.min(...s),
      height: Math.max(...z) - Math.min(...z),
      thickness: chamber.depth[1] - chamber.depth[0],
      volume: chamber.volume,
      weight: (chamber.volume / 1000) * fill.density,
    };
  });
}
