import words from '../../../templates/fin.json' with { type: 'json' };
import type { Point } from '../../contour/point.js';
import type { BuiltFin } from '../../fin/finOf.js';
import { halfThickness, THICKEST } from '../../fin/foil.js';
import { contourOf } from '../../fin/outline.js';
import type { FinSection } from '../../fin/section.js';
import { sidesOf } from '../../fin/layers.js';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import { say } from '../../words/say.js';
import type { Caption, Drawing, Layer, Legend, Part, Shape } from '../drawing.js';
import { layInRows } from '../layInRows.js';
import { widthOf } from '../lettering.js';
import { circle, line, polygon, text } from '../primitives.js';

const LETTERS = 5;
const SMALL = 3.5;
/** How far a template stands out beyond the curve, and beyond the ends of the chord, mm: enough to hold it by. */
const GRIP = 22;
const ENDS = 8;
/** Steps along a foil; close together at the leading edge. */
const STEPS = 60;

/** The outline of every fin that is built, and its foil templates, at full size. */
export function finSheets({ fins, job }: Plan): Drawing[] {
  return fins.flatMap((fin) => [outlineSheet(fin, job.units), foilSheet(fin, job.units)]);
}

const legend = (of: keyof typeof words.legend): Legend => Object.entries(words.legend[of]) as [Layer, string][];

function outlineSheet(fin: BuiltFin, units: Units): Drawing {
  const { spec, index, blank, centre, sections, standing } = fin;
  const { name, depth } = spec;
  const { from, to } = blank;
  const bottom = -blank.below;
  const top = depth + blank.above;
  const length = (mm: number) => printLength(mm, units);
  const called = say(words.outline.name, { name });
  const across = (y: number, layer: Layer) => line(layer, [from, y], [to, y]);
  const stations = sections.filter(({ y }) => y > 0);
  return {
    id: `fin-${index + 1}-outline`,
    title: say(words.outline.title, { name }),
    name: called,
    notes: [standing.length > 1 ? words.outline.notePair : words.outline.note],
    legend: legend('outline'),
    shapes: [
      polygon('cut', sawnOf(fin)),
      polygon('edge', [
        [from, bottom],
        [to, bottom],
        [to, top],
        [from, top],
      ]),
      across(0, 'edge'),
      across(depth, 'edge'),
      ...stations.map(({ y }) => across(y, 'mark')),
      ...layerLines(sections),
      line('mark', [centre.x - 6, centre.y], [centre.x + 6, centre.y]),
      line('mark', [centre.x, centre.y - 6], [centre.x, centre.y + 6]),
      circle('mark', centre.x, centre.y, 3),
    ],
    captions: [
      on(called, [
        [centre.x, centre.y - 22],
        [centre.x, centre.y + 22],
        [centre.x, centre.y - 40],
      ]),
      on(
        words.outline.centre,
        [
          [centre.x, centre.y + 10],
          [centre.x, centre.y - 10],
        ],
        SMALL,
      ),
      on(spec.build!.tab?.isTemporary ? words.outline.baseOfTab : words.outline.base, [
        [(from + to) / 2, -LETTERS],
        [(from + to) / 2, LETTERS + 2],
      ]),
      on(
        words.outline.tip,
        [
          [(from + to) / 2, depth + LETTERS],
          [from + 25, depth - LETTERS],
        ],
        SMALL,
      ),
      on(
        words.outline.front,
        [
          [from + 4, depth / 2],
          [from + 4, depth / 3],
        ],
        LETTERS,
        'left',
      ),
      ...stations.map(({ y }) =>
        on(
          length(y),
          [
            ...[2, 12, 24, 36].flatMap((off): Point[] => [
              [from + off, y + SMALL],
              [from + off, y - SMALL],
            ]),
            ...[30, 42, 54, 70].flatMap((off): Point[] => [
              [to - off, y + SMALL],
              [to - off, y - SMALL],
            ]),
          ],
          SMALL,
          'left',
        ),
      ),
      ...(spec.build!.tab
        ? [
            on(words.outline.tab, [
              [(from + to) / 2, bottom / 2 - LETTERS],
              [from + 20, bottom / 2],
            ]),
          ]
        : []),
    ],
  };
}

/** What is sawn from the blank: the fin, and its tab, which is as long as the base. */
function sawnOf({ spec, outline }: BuiltFin): Point[] {
  const { tab } = spec.build!;
  const contour = contourOf(outline);
  return tab ? [[spec.base, -tab.depth], ...contour, [0, -tab.depth]] : contour;
}

/** Where each layer comes to light, from the base to the highest station that it reaches. */
function layerLines(sections: readonly FinSection[]): Shape[] {
  const names = [...new Set(sections.flatMap(({ lines }) => lines.map(({ under }) => under)))];
  return names.flatMap((name) => {
    const found = sections.flatMap(({ y, from, lines }) =>
      lines.filter(({ under }) => under === name).map(({ ahead, behind }) => ({ y, from, ahead, behind })),
    );
    if (found.length < 2) return [];
    return (['ahead', 'behind'] as const).map((side) =>
      line('joint', ...found.map((each): Point => [each.from + each[side], each.y])),
    );
  });
}

function on(
  words: string,
  places: readonly Point[],
  height = LETTERS,
  align: 'left' | 'centre' | 'right' = 'centre',
): Caption {
  return { places: places.map((at) => [text(words, at, height, align)]) };
}

function foilSheet({ spec, index, sections }: BuiltFin, units: Units): Drawing {
  const apart = layInRows(sections.map((section) => template(section, sidesOf(spec), spec.name, units)));
  return {
    id: `fin-${index + 1}-foil`,
    title: say(words.foil.title, { name: spec.name }),
    notes: [words.foil.note],
    legend: legend('foil'),
    shapes: apart.flatMap(({ shapes }) => shapes),
    captions: apart.flatMap(({ captions }) => captions),
    apart,
  };
}

/** A card whose hollow fits one foiled side at a station, its chord line level. */
function template({ y, length, thickness, lines }: FinSection, sides: 1 | 2, name: string, units: Units): Part {
  const reach = thickness * (2 / sides);
  const at = (u: number): Point => [u * length, reach * halfThickness(u)];
  const curve = Array.from({ length: STEPS + 1 }, (_, i) => at((i / STEPS) ** 2));
  const top = reach * halfThickness(THICKEST) + GRIP;
  const tick = (u: number, layer: Layer) => line(layer, at(u), [at(u)[0], at(u)[1] + LETTERS]);
  const values = { name, y: printLength(y, units), chord: printLength(length, units) };
  const called = say(words.foil.called, values);
  const fits = widthOf(called, SMALL) < length;
  return {
    name: called,
    shapes: [
      polygon('cut', [[-ENDS, 0], ...curve, [length, 0], [length + ENDS, 0], [length + ENDS, top], [-ENDS, top]]),
      tick(THICKEST, 'mark'),
      ...lines.flatMap(({ ahead, behind }) => [ahead, behind].map((x) => tick(x / length, 'joint'))),
    ],
    captions: [
      on(
        fits ? called : say(words.foil.short, values),
        [
          [length / 2, top - 5],
          [length / 2, top - 8],
        ],
        SMALL,
      ),
      on(
        words.foil.front,
        [
          [-ENDS + 2, top - 14],
          [-ENDS + 2, top - 5],
        ],
        SMALL,
        'left',
      ),
    ],
  };
}
