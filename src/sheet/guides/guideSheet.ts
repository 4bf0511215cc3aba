import { easeCorners } from '../../contour/ease.js';
import words from '../../../templates/guides.json' with { type: 'json' };
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Vertex } from '../../contour/vertex.js';
import type { Plan } from '../../plan.js';
import { openingOf } from '../../rout/opening.js';
import type { Guide } from '../../rout/rout.js';
import type { Caption, Drawing } from '../drawing.js';
import { legendOf } from '../legendOf.js';
import { contour, line, text } from '../primitives.js';
import { say } from '../../words/say.js';

/** Centre lines stand out of the opening by so much, mm: they are carried over to the piece. */
const OUT = 25;
const LARGEST = 14;
const LETTERS = 5;

/** The guides to be made, each once and at full size: the shared ones, then those of chambers that keep their own. */
export function guideSheets(plan: Plan): Drawing[] {
  return [...plan.routing.guides.map((guide) => sharedSheet(plan, guide)), ...ownSheets(plan)];
}

function sharedSheet(plan: Plan, { id, opening, chambers }: Guide): Drawing {
  const { length, height, corner } = opening;
  const [l, h] = [length / 2, height / 2];
  const eased = easeCorners(
    [
      [-l, -h],
      [l, -h],
      [l, h],
      [-l, h],
    ],
    corner,
  );
  return {
    id: `guide-${id}`,
    title: say(words.title, { guide: id }),
    notes: notesOf(plan, { length, height, corner }, chambers),
    shapes: [
      contour('guide', eased?.contour ?? []),
      line('mark', [-l - OUT, 0], [l + OUT, 0]),
      line('mark', [0, -h - OUT], [0, h + OUT]),
    ],
    legend: legendOf('guide'),
    captions: [wordsIn(plan, id, length, height)],
  };
}

/**
 * Openings of chambers that no shared guide serves: all of them where none are shared. Turned as the chamber lies on
 * its face.
 */
function ownSheets(plan: Plan): Drawing[] {
  const shared = new Set(plan.routing.settings.map(({ chamber }) => chamber));
  const { bush } = plan.job.routing;
  return plan.chambers.flatMap((chamber): Drawing[] => {
    if (shared.has(chamber.id)) return [];
    const opening = openingOf(chamber.contour, plan.job.chambers.cutterDiameter, bush);
    if (!opening) return [];
    const xs = opening.map(({ x }) => x);
    const ys = opening.map(({ y }) => y);
    const [length, height] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
    const [x, y] = [(Math.max(...xs) + Math.min(...xs)) / 2, (Math.max(...ys) + Math.min(...ys)) / 2];
    const moved = opening.map((v): Vertex => ({ ...v, x: v.x - x, y: v.y - y }));
    return [
      {
        id: `guide-${chamber.id}`,
        title: say(words.ownTitle, { chamber: chamber.id }),
        notes: notesOf(plan, { length, height, corner: bush / 2 }, [chamber.id]),
        shapes: [
          contour('guide', moved),
          line('mark', [-length / 2 - OUT, 0], [length / 2 + OUT, 0]),
          line('mark', [0, -height / 2 - OUT], [0, height / 2 + OUT]),
        ],
        legend: legendOf('guide'),
        captions: [wordsIn(plan, chamber.id, length, height)],
      },
    ];
  });
}

function notesOf(plan: Plan, size: Guide['opening'], chambers: readonly string[]): string[] {
  const print = (mm: number) => printLength(mm, plan.job.units);
  const values = {
    length: printAs('opening', size.length, plan.job.units),
    height: printAs('opening', size.height, plan.job.units),
    corner: printAs('corner', size.corner, plan.job.units),
    bush: print(plan.job.routing.bush),
    cutter: print(plan.job.chambers.cutterDiameter),
    offset: printAs('opening', plan.routing.offset, plan.job.units),
    chambers: chambers.join(', '),
  };
  return [...words.notes.map((note) => say(note, values)), words.care];
}

/**
 * Its number and size: in a quarter of the opening, or beside it where the opening is small or a seam is in the way.
 */
function wordsIn(plan: Plan, id: string, length: number, height: number): Caption {
  const size = [length, height].map((mm) => printAs('opening', mm, plan.job.units)).join(' × ');
  const block = (x: number, y: number, large: number, align: 'left' | 'centre' = 'centre') => [
    text(id, [x, y + 5], large, align),
    text(size, [x, y - large / 2 - 1], LETTERS, align),
  ];
  const [l, h] = [length / 2, height / 2];
  const inside = [LARGEST, 10, 7, 5].flatMap((large) =>
    [0.5, 0.35, 0.65].flatMap((share) =>
      [1, -1].flatMap((right) => [1, -1].map((up) => block(right * share * l, (up * h) / 2, large))),
    ),
  );
  const outside = [h + 14, -h - 14].flatMap((y) => [4, -60, 30, -100].map((x) => block(x, y, 7, 'left')));
  return { places: [...inside, ...outside] };
}
