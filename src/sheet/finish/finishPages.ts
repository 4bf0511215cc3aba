import words from '../../../templates/finish.json' with { type: 'json' };
import { OVERLAP, type Coat, type LaminatedSide } from '../../finish/finishOf.js';
import { sayBatches } from '../../finish/sayBatches.js';
import { USUAL_GLASS, USUAL_LAMINATING } from '../../job/usual-glass.js';
import { printArea } from '../../length/area.js';
import { printArealWeight } from '../../length/areal.js';
import { printLength } from '../../length/length.js';
import { printAs } from '../../length/rounded.js';
import { printPoured, printWeight } from '../../length/weight.js';
import type { Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import { USUAL } from '../../weigh/usual.js';
import { say, WORDS } from '../../words/say.js';
import type { Cell, TextBlock, TextPage } from '../pages.js';
import { cautionsOf } from '../cautions.js';
import { columnsOf, row } from '../table.js';
import { hasWood } from './wood.js';
import { finishOnce } from './finishOnce.js';

/** Sealing, lamination, hot coat and sanding, with the amounts of this board. */
export function finishPages(plan: Plan): TextPage[] {
  const { units } = plan.job;
  const { glass = USUAL_GLASS } = plan.job;
  const finish = finishOnce(plan);
  const { sealing, order, hotCoat, sanding } = words;
  const coat = (of: Coat) => ({
    area: printArea(finish.area, units),
    resin: printWeight(of.resin, units),
    mix: printPoured(of.mix, units),
    batches: sayBatches(of, units),
  });
  const list = (items: readonly string[]): TextBlock => ({ kind: 'list', items, numbered: true });
  const [first] = finish.sides;
  const sealSteps = hasWood(plan)
    ? sealing.steps
    : sealing.steps.map((step, i) => (i === WOOD_STEP ? sealing.woodless : step));
  const sanded = (finish.area * USUAL.sanded.value) / 1000;
  return [
    {
      kind: 'text',
      title: words.title,
      blocks: [
        ...(glass.sealer > 0
          ? [
              { kind: 'heading', text: sealing.heading } as const,
              { kind: 'paragraph', text: say(sealing.amount, coat(finish.sealer)) } as const,
              list(sealSteps),
            ]
          : []),
        ...(first
          ? [
              { kind: 'heading', text: order.heading } as const,
              { kind: 'paragraph', text: order[first.side] } as const,
              list(order.steps),
            ]
          : []),
        ...finish.sides.flatMap((side) => sideBlocks(side, plan)),
        ...(glass.hotCoat > 0
          ? [
              { kind: 'heading', text: hotCoat.heading } as const,
              { kind: 'paragraph', text: say(hotCoat.amount, coat(finish.hotCoat)) } as const,
              ...(finish.coatCloth === undefined
                ? []
                : [{ kind: 'paragraph', text: coatCloth(finish.coatCloth, finish.coatLength, units) } as const]),
              list([...hotCoat.steps, ...(finish.coatCloth === undefined ? [] : [hotCoat.clothStep])]),
            ]
          : []),
        { kind: 'heading', text: sanding.heading },
        list(sanding.steps.map((step) => say(step, { grams: printWeight(sanded, units) }))),
        cautionsOf(['resin', 'glass-dust']),
      ],
    },
  ];
}

/** The step that speaks of wood. */
const WOOD_STEP = 2;

function coatCloth(cloth: number, length: number, units: Units): string {
  return say(words.hotCoat.cloth, {
    cloth: printArealWeight(cloth, units),
    length: printAs('needed', length, units),
  });
}

function sideBlocks(side: LaminatedSide, { job }: Plan): TextBlock[] {
  const { heading, pairs, tableNote, columns, ...said } = words.side;
  const { units, glass = USUAL_GLASS, laminating = USUAL_LAMINATING } = job;
  const { layers, cut, widths, area, outline, minutes, batches, mix } = side;
  const length = (mm: number): Cell => ({ value: mm, text: printLength(mm, units) });
  const needed = (mm: number) => printAs('needed', mm, units);
  const isAlike = outline.every(({ left, right }) => Math.abs(left - right) < ALIKE);
  return [
    { kind: 'heading', text: heading[side.side] },
    {
      kind: 'pairs',
      pairs: [
        [pairs.layers, layers.map((cloth) => printArealWeight(cloth, units)).join(WORDS.joinWith)],
        [
          pairs.cut,
          say(widths === 1 ? said.cut : said.joined, {
            length: needed(widths * cut.length),
            widths,
            overlap: needed(OVERLAP),
          }),
        ],
        [pairs.laps, say(said.laps, { lap: needed(glass.lap) })],
        [pairs.area, printArea(area, units)],
        [pairs.resin, say(said.resin, { resin: printWeight(side.resin, units), mix: printPoured(mix, units) })],
        [
          pairs.batches,
          say(said.batches, {
            batches,
            each: printPoured(mix / batches, units),
            minutes: Math.ceil(minutes),
            potLife: laminating.potLife,
          }),
        ],
      ],
    },
    { kind: 'paragraph', text: tableNote },
    {
      kind: 'table',
      columns: columnsOf(
        [columns.x, 'number'],
        [columns.along, 'number'],
        ...(isAlike
          ? [[columns.both, 'number'] as const]
          : ([
              [columns.left, 'number'],
              [columns.right, 'number'],
            ] as const)),
      ),
      rows: outline.map(({ x, along, left, right }) =>
        row(length(x), length(along), ...(isAlike ? [length(right)] : [length(left), length(right)])),
      ),
    },
  ];
}

/** Sides that differ by less are cut as one, mm. */
const ALIKE = 0.5;
