import { sayProud } from '../../block/sayProud.js';
import { printAs } from '../../length/rounded.js';
import type { Plan } from '../../plan.js';
import { blockOutlines, type BlockOutline } from './blockOutlines.js';
import type { Caption, Drawing } from '../drawing.js';
import { layInRows } from '../layInRows.js';
import { legendOf } from '../legendOf.js';
import { outlineWords } from './outlineWords.js';
import { contour } from '../primitives.js';
import { say, WORDS } from '../../words/say.js';

/**
 * The outlines of a plan's blocks at full size, a drawing for each row that has outlines no row before it has: every
 * different outline once, with the number of each block it serves, thickness, nose and deck. They lie in rows beside
 * each other, ready for a sheet of foam, each on its own.
 */
export function blockSheets(plan: Plan): Drawing[] {
  const outlines = blockOutlines(plan);
  return [...new Set(outlines.map(({ row }) => row))].map((row): Drawing => {
    const its = outlines.filter((outline) => outline.row === row);
    const rows = [...new Set(its.flatMap(({ serves }) => serves.map(({ block }) => block.row)))];
    const apart = layInRows(
      its.map((outline) => ({
        name: outline.serves.map(({ block }) => block.id).join(WORDS.joinWith),
        shapes: [contour('block', outline.contour)],
        captions: [wordsOn(outline, plan)],
      })),
    );
    return {
      id: `blocks-${row}`,
      title: say(WORDS.block.title, { row: rows.join(WORDS.joinWith) }),
      notes: [WORDS.block.notes],
      legend: legendOf('block'),
      shapes: apart.flatMap(({ shapes }) => shapes),
      captions: apart.flatMap(({ captions }) => captions),
      apart,
    };
  });
}

function wordsOn({ contour: vertices, noseAt, serves }: BlockOutline, plan: Plan): Caption {
  const thick = ({ block }: (typeof serves)[number]) => printAs('block', block.made.thickness, plan.job.units);
  const thicknesses = new Set(serves.map(thick));
  const first = thick(serves[0]!);
  const stands = new Set(serves.map(({ block }) => sayProud(block.proud, plan.job.units)));
  // Blocks of one outline may differ in thickness: then each number has its own beside it.
  const numbers = serves.map((served) => {
    const named = thicknesses.size > 1 ? `${served.block.id}: ${thick(served)}` : served.block.id;
    const its = sayProud(served.block.proud, plan.job.units);
    const number =
      its !== '' && stands.size > 1
        ? say(WORDS.block.proudNumber, { number: named, proud: say(WORDS.block.proud, { proud: its }) })
        : named;
    return served.turnedOver ? say(WORDS.block.turnedOver, { number }) : number;
  });
  const [proud] = stands;
  return outlineWords(vertices, {
    numbers,
    thick: thicknesses.size > 1 ? '' : say(WORDS.block.thick, { thickness: first }),
    noseAt,
    ...(proud && stands.size === 1 && { proud: say(WORDS.block.proud, { proud }) }),
  });
}
