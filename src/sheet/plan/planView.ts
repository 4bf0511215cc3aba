import type { Point } from '../../contour/point.js';
import type { Plan } from '../../plan.js';
import { chambersInPlan, type ChamberInPlan } from '../../view/chamberInPlan.js';
import type { Caption, Drawing, Part, Shape } from '../drawing.js';
import { widthOf } from '../lettering.js';
import type { Stretch } from '../../chamber/stretch.js';
import { planBase } from './planBase.js';
import { jointLines, jointNames } from './joints.js';
import { keepOutNumber, keepOutWords } from './keepOuts.js';
import { line, polygon, text } from '../primitives.js';
import { say, WORDS } from '../../words/say.js';

/** What a page carries beside the words, lying, on the smaller of the usual papers, mm. */
const PAGE = { length: 195, width: 115 } as const;
/** Scales of ISO 5455 for a part of the board, the largest first, and for the whole. */
const PART_SCALES = [5, 10, 20] as const;
const WHOLE_SCALE = 20;
/** Letters on the paper: the largest that there is room for, mm (ISO 3098-1:2015 and between). */
const LETTERS = [3.5, 2.5, 2.2, 1.8] as const;
/** Kept free around them, the more the better, mm. */
const AIR = [0.8, 0.2] as const;

/** What is written in a chamber on a plan, on one line or on several, and how it is hatched. */
export interface InChamber {
  readonly words: readonly string[];
  readonly hatch?: 'light' | 'medium' | 'dark';
}

/** The whole board from the deck: outline, joints, chambers, keep-outs. Numbers stand on the parts. */
export function planView(plan: Plan): Drawing {
  return {
    id: 'plan',
    title: WORDS.planView.title,
    notes: planNotes(plan, WORDS.planView.wholeNotes),
    ...planShapes(plan, { from: 0, to: plan.board.length }, WHOLE_SCALE),
  };
}

/** The board in parts at a scale at which the chambers' numbers can be read. */
export function planParts(plan: Plan): Drawing[] {
  const { scale, stretches } = partsOf(plan);
  return stretches.map((stretch, i) => ({
    id: `plan-${i + 1}`,
    title: say(WORDS.planView.part, { part: i + 1, parts: stretches.length }),
    notes: planNotes(plan, WORDS.planView.notes),
    ...planShapes(plan, stretch, scale, ({ id }) => ({ words: [id] })),
  }));
}

/**
 * The board's length in even parts, nose to tail, each short enough for a page, and the scale at which the board's
 * width fits it.
 */
export function partsOf({ board }: Plan): { readonly scale: number; readonly stretches: readonly Stretch[] } {
  const scale = PART_SCALES.find((each) => board.width <= PAGE.width * each) ?? PART_SCALES[PART_SCALES.length - 1]!;
  const count = Math.ceil(board.length / (PAGE.length * scale));
  const step = board.length / count;
  const stretches = Array.from({ length: count }, (_, i) => ({
    from: i * step,
    to: i + 1 === count ? board.length : (i + 1) * step,
  }));
  return { scale, stretches };
}

/**
 * A stretch of the plan with its chambers, joints too where something is written in them; a chamber belongs to the
 * stretch that holds its middle.
 */
export function planShapes(
  plan: Plan,
  stretch: Stretch,
  scale: number,
  inChamber?: (chamber: Plan['chambers'][number]) => InChamber,
): Omit<Part, 'name'> {
  const taken: (readonly Point[])[] = [];
  const shown: (readonly Point[])[] = [];
  const captions: Caption[] = [];
  const chambers = chambersInPlan(plan.layup.rows, plan.chambers).flatMap((place): Shape[] => {
    const { chamber, corners, middle } = place;
    taken.push(corners);
    if (middle[0] < stretch.from || middle[0] >= stretch.to) return cutShort(corners, stretch);
    shown.push(corners);
    const { words, hatch }: InChamber = inChamber?.(chamber) ?? { words: [] };
    const places = placesIn(words, place, scale);
    if (places.length > 0) captions.push({ places });
    return [polygon('chamber', corners, hatch)];
  });
  const before = Math.min(stretch.from, ...shown.flatMap((corners) => corners.map(([x]) => x)));
  const joints = inChamber
    ? [
        ...jointLines(plan, stretch, [...taken, ...keepOutWords(plan, scale)]),
        ...jointNames(plan, stretch, before - scale, scale),
      ]
    : [];
  const base = planBase(plan, stretch, scale, joints, inChamber ? keepOutNumber : undefined);
  return { shapes: [...base.shapes, ...chambers], captions: [...captions, ...base.captions] };
}

/**
 * Words in a chamber as large as they fit: on one line, upright, or a line for each; along the chamber where something
 * else stands in its middle.
 */
function placesIn(
  words: readonly string[],
  { middle, along: width, across: height }: ChamberInPlan,
  scale: number,
): Shape[][] {
  if (words.length === 0) return [];
  const upright = { angleInDegrees: 90 };
  const whole = words.join(' ');
  const found = LETTERS.flatMap((letters) => AIR.map((air) => [letters * scale, air * scale] as const)).flatMap(
    ([size, air]): Shape[][] => {
      const fits = (lines: readonly string[], along: number, across: number) =>
        Math.max(...lines.map((line) => widthOf(line, size))) + 2 * air <= along &&
        (1.4 * lines.length + 0.1) * size + 2 * air <= across;
      const along = (draw: (x: number) => Shape[], taken: number) => {
        const free = (width - taken) / 2 - air;
        return [0, -0.5, 0.5, -1, 1].map((share) => draw(middle[0] + share * Math.max(0, free)));
      };
      return [
        ...(fits([whole], width, height)
          ? along((x) => [text(whole, [x, middle[1]], size)], widthOf(whole, size))
          : []),
        ...(words.length > 1 && fits(words, width, height)
          ? along(
              (x) =>
                words.map((line, i) => text(line, [x, middle[1] + ((words.length - 1) / 2 - i) * 1.4 * size], size)),
              Math.max(...words.map((line) => widthOf(line, size))),
            )
          : []),
        ...(fits([whole], height, width)
          ? along((x) => [text(whole, [x, middle[1]], size, 'centre', upright)], size)
          : []),
      ];
    },
  );
  // Nothing is without its number.
  return found.length > 0 ? found : [[text(whole, middle, LETTERS.at(-1)! * scale)]];
}

/** What the stretch shows of a chamber that belongs to the next: its sides up to where the drawing ends. */
function cutShort(corners: readonly Point[], { from, to }: Stretch): Shape[] {
  return corners.flatMap(([x0, y0], i): Shape[] => {
    const [x1, y1] = corners[(i + 1) % corners.length]!;
    const [low, high] = [Math.max(from, Math.min(x0, x1)), Math.min(to, Math.max(x0, x1))];
    if (low > high || x0 === x1) return low > high ? [] : [line('chamber', [x0, y0], [x1, y1])];
    const y = (x: number) => y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
    return [line('chamber', [low, y(low)], [high, y(high)])];
  });
}

function planNotes(plan: Plan, notes: readonly string[]): string[] {
  const keepOuts = plan.job.keepOuts.map(({ name }, i) => say(WORDS.planView.keepOut, { number: i + 1, name }));
  return [
    ...notes.map((note) => say(note, { keepOuts: keepOuts.join(WORDS.joinWith) || WORDS.planView.noKeepOuts })),
    ...(plan.fins.length > 0 ? [WORDS.planView.fins] : []),
  ];
}
