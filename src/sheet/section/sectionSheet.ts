import type { Plan } from '../../plan.js';
import type { Drawing, Shape } from '../drawing.js';
import { isSymmetric, sectionAt } from '../../view/section.js';
import { sectionHalf, type Half } from './sectionHalf.js';
import { sectionPlaces, type SectionPlace } from './sectionPlaces.js';
import { say, WORDS } from '../../words/say.js';

/**
 * Drawn at half size (ISO 5455), so that a half of the board fits a page: the page's height in the board's millimetres.
 */
const ROOM = 410;
/** Between halves, mm. */
const BETWEEN = 8;
/**
 * Sections with their walls dimensioned, half by half, as many to a drawing as a page holds. Where the board is the
 * same on both sides, the right half stands for both.
 */
export function sectionSheets(plan: Plan): Drawing[] {
  const halves = sectionPlaces(plan).flatMap((place) => halvesOf(plan, place));
  const sheets: Half[][] = [[]];
  let used = 0;
  for (const half of halves) {
    if (used + half.tall > ROOM && sheets[sheets.length - 1]!.length > 0) {
      sheets.push([]);
      used = 0;
    }
    sheets[sheets.length - 1]!.push(half);
    used += half.tall + BETWEEN;
  }
  return sheets
    .filter((sheet) => sheet.length > 0)
    .map((sheet, i, { length }) => ({
      id: `sections-${i + 1}`,
      title: say(WORDS.section.title, { sheet: i + 1, sheets: length }),
      notes: WORDS.section.notes,
      shapes: stacked(sheet),
    }));
}

function stacked(halves: readonly Half[]): Shape[] {
  let down = 0;
  return halves.flatMap(({ shapes, tall }) => {
    const moved = shapes.map((shape) => lowered(shape, down));
    down += tall + BETWEEN;
    return moved;
  });
}

function lowered(shape: Shape, by: number): Shape {
  if (shape.kind !== 'path') return { ...shape, y: shape.y - by };
  return { ...shape, vertices: shape.vertices.map((v) => ({ ...v, y: v.y - by })) };
}

/** The right half, and the left one where it differs. */
function halvesOf(plan: Plan, place: SectionPlace): Half[] {
  const section = sectionAt(plan, place.x);
  if (section.loops.length === 0) return [];
  const same = !plan.job.board.left && isSymmetric(section);
  if (same) return [sectionHalf(plan, place, section, 'right', WORDS.section.both)];
  return (['right', 'left'] as const).map((name) =>
    sectionHalf(plan, place, section, name, say(WORDS.section.half, { side: WORDS.face.side[name] })),
  );
}
