import type { Point } from '../../contour/point.js';
import { PATCHES, type Patch } from '../../board/mesh.js';
import { inHalfPlane } from '../../contour/halfPlane.js';
import { spanAt } from '../../contour/span.js';
import { without } from '../../chamber/stretch.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import type { Row } from '../../layup/layup.js';
import type { Plan } from '../../plan.js';
import { dimensions } from './dimensions.js';
import type { Shape } from '../drawing.js';
import { heightFitting, widthOf } from '../lettering.js';
import { line, polygon, text } from '../primitives.js';
import type { Section } from '../../view/section.js';
import { wallsInPlane } from '../../view/wallsInPlane.js';
import type { SectionPlace } from './sectionPlaces.js';
import { say, WORDS } from '../../words/say.js';

/** Letters in the board's millimetres: on the paper, at half size, half of that. */
const LETTERS = 5;
const TITLE = 7;
/** The page's width, mm of the board. */
const WIDTH = 320;
/** Kept free over and under the board for its walls' figures, mm. */
const ABOVE = 18;

export type HalfName = 'left' | 'right';

/** A half of a section, as tall as it comes; `shapes` with its top at `y` = 0, mm of the board. */
export interface Half {
  readonly shapes: readonly Shape[];
  readonly tall: number;
}

/**
 * One half of a section with its walls dimensioned, and its heading. The right half runs to the right from the
 * centreline, the left half to the left of it.
 *
 * @param which what half it is, in words
 */
export function sectionHalf(plan: Plan, place: SectionPlace, section: Section, name: HalfName, which: string): Half {
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
  const insides = cut.map(({ chamber, row, corners }) => ({ chamber, row, inside: clippedAtCentre(corners, name) }));
  const gaps = insides.flatMap(({ row, inside }) => Object.values(wallsInPlane(section.loops, inside, wallsOf(row))));
  const heading = [say(WORDS.section.at, { at: printLength(place.x, units) }), which].join(' · ');
  const thin = filled(
    place.thin.map(({ chamber, patch }) =>
      say(WORDS.section.thin, {
        chamber: chamber.id,
        patch: WORDS.patch[patch],
        wall: printAs('there', chamber.wall[patch], units),
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
    ...insides.flatMap(({ chamber, inside }) => [
      polygon('chamber', inside.map(at)),
      ...numberIn(chamber.id, inside.map(at)),
    ]),
    ...dimensions(gaps, at, LETTERS, units),
  ];
  return { shapes, tall: high - low + top + ABOVE };
}

/** The walls worth a dimension: the rail's where it ends the row. */
function wallsOf({ end }: Row): readonly Patch[] {
  return end === 'rail' ? PATCHES : ['deck', 'bottom'];
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

/** What of an outline lies on one side of the centreline. */
function clippedAtCentre(points: readonly Point[], name: HalfName): Point[] {
  return inHalfPlane(points, [name === 'right' ? -1 : 1, 0], 0);
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
