import { PATCHES, type Patch } from '../../board/mesh.js';
import { MET } from '../../chamber/carve.js';
import type { Chamber } from '../../chamber/chamber.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Plan } from '../../plan.js';
import type { Drawing } from '../drawing.js';
import { partsOf, planShapes, type InChamber } from './planView.js';
import { say, WORDS } from '../../words/say.js';

/** Up to this much over what was asked is hatched as some to spare, mm. */
const SOME = 3;

/**
 * A plan of each chamber's thinnest wall beside what was asked, in parts; how much is to spare shows by hatching alone.
 */
export function wallMap(plan: Plan): Drawing[] {
  const { scale, stretches } = partsOf(plan);
  return stretches.map((stretch, i) => ({
    id: `walls-${i + 1}`,
    title: say(WORDS.wallMap.title, { part: i + 1, parts: stretches.length }),
    notes: WORDS.wallMap.notes.map((note) => say(note, { some: printLength(SOME, plan.job.units) })),
    ...planShapes(plan, stretch, scale, (chamber) => thinnestOf(chamber, plan)),
  }));
}

function thinnestOf(chamber: Chamber, plan: Plan): InChamber {
  const { patch, spare } = tightest(chamber, plan.asked);
  const hatch = spare < 0 ? 'dark' : spare <= MET ? 'medium' : spare <= SOME ? 'light' : undefined;
  return {
    words: [WORDS.patchLetter[patch], printAs('there', chamber.wall[patch], plan.job.units)],
    ...(hatch && { hatch }),
  };
}

/** The wall with the least to spare over what was asked, mm. */
export function tightest(chamber: Chamber, asked: Plan['asked']): { patch: Patch; spare: number } {
  return PATCHES.map((patch) => ({ patch, spare: chamber.wall[patch] - asked[patch] })).reduce((a, b) =>
    b.spare < a.spare ? b : a,
  );
}
