import { without } from '../chamber/stretch.js';
import { printLength } from '../length/length.js';
import type { Plan } from '../plan.js';
import { printAtMost } from './atMost.js';
import type { Drawing, Shape } from './drawing.js';
import { spanAt } from './finished.js';
import type { Gap } from './gap.js';
import { heightFitting, widthOf } from './lettering.js';
import { line, polygon, text, type Point } from './primitives.js';
import { isSymmetric, sectionAt, wallsInPlane, type Section } from './section.js';
import { sectionPlaces, type SectionPlace } from './sectionPlaces.js';
import { say, WORDS } from './words.js';

/** Drawn at half size (ISO 5455), so that a half of the board fits a page: the page's room in the board's millimetres. */
const ROOM = 410;
const WIDTH = 320;
/** Letters in the board's millimetres: on the paper half of that. */
const LETTERS = 5;
const TITLE = 7;
const BETWEEN = 8;
/** How far a wall's figure stands off the surface, mm. */
const OFF = 9;
const ABOVE = 13;

type HalfName = 'left' | 'right';

/** A half of a section, as tall as it comes; `shapes` with its top at `y` = 0. */
interface Half {
  readonly shapes: readonly Shape[];
  readonly tall: number;
}

/** Sections with their walls dimensioned, half by half, as many to a drawing as a page holds. Where the board is the same on both sides, the right half stands for both. */
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
  if (same) return [half(plan, place, section, 'right', WORDS.section.both)];
  return (['right', 'left'] as const).map((name) =>
    half(plan, place, section, name, say(WORDS.section.half, { side: WORDS.face.side[name] })),
  );
}

/** One half with its heading. The right half runs to the right from the centreline, the left half to the left of it. */
function half(plan: Plan, place: SectionPlace, section: Section, name: HalfName, which: string): Half {
  const { units } = plan.job;
  const onSide = (y: number) => (name === 'right' ? y >= -SEEN : y <= SEEN);
  const zs = section.loops.flatMap(({ points }) => points.map(([, z]) => z));
  const [low, high] = [Math.min(...zs), Math.max(...zs)];
  const reach = Math.max(...section.loops.flatMap(({ points }) => points.map(([y]) => (onSide(y) ? Math.abs(y) : 0))));
  const left = name === 'right' ? 0 : -reach;

  const outline = section.loops
    .map(({ points }) => clippedAtCentre(points, name))
    .filter((points) => points.length > 2);
  const cut = section.chambers.filter(({ corners }) =>
    corners.some(([y]) => (name === 'right' ? y > SEEN : y < -SEEN)),
  );
  const heading = [say(WORDS.section.at, { at: printLength(place.x, units) }), which].join(' · ');
  const thin = filled(
    place.thin.map(({ chamber, patch }) =>
      say(WORDS.section.thin, {
        chamber: chamber.id,
        patch: WORDS.patch[patch],
        wall: printAtMost(chamber.wall[patch], units),
      }),
    ),
  );
  const top = TITLE + thin.length * 1.6 * LETTERS + ABOVE;
  const at = ([y, z]: Point): Point => [y - left, z - high - top];
  const shapes: Shape[] = [
    text(heading, [0, -TITLE / 2], TITLE, 'left'),
    ...thin.map((words, i) => text(words, [0, -TITLE - (i + 0.7) * 1.6 * LETTERS], LETTERS, 'left')),
    ...outline.map((points) => polygon('outline', points.map(at))),
    ...jointsAt(plan, section, name, at),
    ...cut.flatMap(({ chamber, row, corners }) => {
      const inside = clippedAtCentre(corners, name);
      const walls = Object.values(wallsInPlane(section, inside, row));
      return [
        polygon('chamber', inside.map(at)),
        ...numberIn(chamber.id, inside.map(at)),
        ...walls.flatMap((gap) => dimension(gap, at, plan)),
      ];
    }),
  ];
  return { shapes, tall: high - low + top + ABOVE };
}

/** A chamber that only touches the centreline belongs to the other half, mm. */
const SEEN = 1e-6;

/** Words side by side in as few lines as the page's width takes. */
function filled(words: readonly string[]): string[] {
  const lines: string[] = [];
  for (const each of words) {
    const joined = lines.length > 0 ? `${lines[lines.length - 1]!}; ${each}` : each;
    if (lines.length > 0 && widthOf(joined, LETTERS) <= WIDTH) lines[lines.length - 1] = joined;
    else lines.push(each);
  }
  return lines;
}

/** What of an outline lies on one side of the centreline: points beyond it are drawn back onto it along the line that crosses. */
function clippedAtCentre(points: readonly Point[], name: HalfName): Point[] {
  const sign = name === 'right' ? 1 : -1;
  return points.flatMap(([y0, z0], i): Point[] => {
    const [y1, z1] = points[(i + 1) % points.length]!;
    const kept: Point[] = sign * y0 >= 0 ? [[y0, z0]] : [];
    if (y0 * y1 < 0) kept.push([0, z0 + (y0 / (y0 - y1)) * (z1 - z0)]);
    return kept;
  });
}

/** The joints as they are left standing between the chambers. */
function jointsAt(plan: Plan, section: Section, name: HalfName, at: (point: Point) => Point): Shape[] {
  return plan.layup.joints.flatMap((joint): Shape[] => {
    const y = joint.at + joint.slope * section.x;
    if (name === 'right' ? y < 0 : y > 0) return [];
    const span = section.loops.map(({ points }) => spanAt(points, y)).find((each) => each !== undefined);
    if (!span) return [];
    const taken = section.chambers.flatMap(({ corners }) => {
      const inside = corners.some(([each]) => each > y + SEEN) && corners.some(([each]) => each < y - SEEN);
      const cut = inside && spanAt(corners, y);
      return cut ? [{ from: cut[0], to: cut[1] }] : [];
    });
    return without({ from: span[0], to: span[1] }, taken).map(({ from, to }) =>
      line('joint', at([y, from]), at([y, to])),
    );
  });
}

function numberIn(id: string, corners: readonly Point[]): Shape[] {
  const x = corners.map(([each]) => each);
  const [from, to] = [Math.min(...x), Math.max(...x)];
  const span = spanAt(corners, (from + to) / 2);
  if (!span) return [];
  const middle: Point = [(from + to) / 2, (span[0] + span[1]) / 2];
  const tall = span[1] - span[0] - 2;
  const level = heightFitting(id, { width: to - from - 2, height: tall }, LETTERS, 3.5);
  if (level) return [text(id, middle, level)];
  const upright = heightFitting(id, { width: tall, height: to - from - 2 }, LETTERS, 2.5);
  return upright ? [text(id, middle, upright, 'centre', { angleInDegrees: 90 })] : [];
}

/** A wall's dimension: a line across the wall, carried on beyond the surface, its figure at the end. */
function dimension({ from, to, distance }: Gap, at: (point: Point) => Point, plan: Plan): Shape[] {
  const [ux, uy] = distance > 0 ? [(to[0] - from[0]) / distance, (to[1] - from[1]) / distance] : [0, 1];
  const end: Point = [to[0] + ux * OFF * 0.6, to[1] + uy * OFF * 0.6];
  const words = printAtMost(distance, plan.job.units).replace(/ (mm|in)$/, '');
  const sideways = Math.abs(ux) > Math.SQRT1_2;
  const clear = sideways ? widthOf(words, LETTERS) / 2 + 1 : LETTERS / 2 + 1;
  const [x, y] = at([end[0] + ux * clear, end[1] + uy * clear]);
  return [
    line('dimension', at(from), at(end)),
    slash(at(from)),
    slash(at(to)),
    text(words, [x, y], LETTERS * 0.7, 'centre', { layer: 'dimension' }),
  ];
}

/** The oblique stroke that ends a dimension (ISO 129-1), mm. */
function slash([x, y]: Point): Shape {
  return line('dimension', [x - 1.5, y - 1.5], [x + 1.5, y + 1.5]);
}
