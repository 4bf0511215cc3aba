import words from '../../../templates/fin.json' with { type: 'json' };
import type { BuiltFin } from '../../fin/finOf.js';
import type { Standing } from '../../fin/stands.js';
import { USUAL_LAMINATING } from '../../job/usual-glass.js';
import { printSmallArea } from '../../length/area.js';
import { printFine } from '../../length/fine.js';
import { printLength } from '../../length/length.js';
import { printWeight } from '../../length/weight.js';
import type { Units } from '../../length/units.js';
import type { Plan } from '../../plan.js';
import { say } from '../../words/say.js';
import { cautionsOf } from '../cautions.js';
import type { DocumentPage, TextPage } from '../pages.js';
import { finTables } from './finTables.js';
import { sledFigure } from './sledFigure.js';

/** Everything about making each fin, in the order of the work. */
export function finPages({ fins, job }: Plan): DocumentPage[] {
  const { loss } = job.laminating ?? USUAL_LAMINATING;
  return fins.flatMap((fin) => [making(fin, loss, job.units), sledFigure(fin, job.units)]);
}

function making(fin: BuiltFin, loss: number, units: Units): TextPage {
  const { page } = words;
  const { spec, area, centre, weight, fitted, base, standing } = fin;
  const length = (mm: number) => printLength(mm, units);
  const { section, stands } = spec.build!;
  const foreseen = printWeight(weight, units);
  const degrees = (radians: number) => `${Number(((radians * 180) / Math.PI).toFixed(1))}°`;
  return {
    kind: 'text',
    title: say(page.title, { name: spec.name }),
    blocks: [
      {
        kind: 'pairs',
        pairs: [
          [page.pairs.count, standing.length > 1 ? page.two : page.one],
          [
            page.pairs.size,
            say(page.size, { base: length(spec.base), tip: length(spec.tip), depth: length(spec.depth) }),
          ],
          [
            page.pairs.thick,
            say(page.thick, { base: printFine(spec.thickness, units), tip: printFine(spec.tipThickness, units) }),
          ],
          [page.pairs.section, words.section[section]],
          [page.pairs.area, printSmallArea(area, units)],
          [page.pairs.centre, say(page.centre, { x: length(centre.x), y: length(centre.y) })],
          [
            page.pairs.weight,
            spec.weight === undefined
              ? say(page.weight, { weight: foreseen })
              : say(page.said, { weight: printWeight(spec.weight, units), foreseen }),
          ],
          ...(base ? [[page.pairs.fitted, say(page.weight, { weight: printWeight(fitted, units) })] as const] : []),
          ...standing.map((each) => [page.pairs.stands, standingIn(each, units)] as const),
          [
            page.pairs.angle,
            stands.away === 0 ? page.square : say(page.angle, { cant: degrees(stands.cant), toe: degrees(stands.toe) }),
          ],
          [
            page.pairs.held,
            standing
              .map(({ keepOut }) => (keepOut === undefined ? page.none : say(page.keepOut, { name: keepOut })))
              .join(', '),
          ],
        ],
      },
      { kind: 'heading', text: page.stepsHeading },
      { kind: 'list', numbered: true, items: stepsOf(fin, units) },
      cautionsOf(['wood-dust', 'resin', 'sled', 'glass-dust']),
      ...finTables(fin, loss, units),
    ],
  };
}

function standingIn({ side, front, back }: Standing, units: Units): string {
  const length = (mm: number) => printLength(mm, units);
  const { stands, standsOnCentre } = words.page;
  return say(side === 'centre' ? standsOnCentre : stands, {
    side: words.side[side],
    front: length(front[0]),
    inFront: length(Math.abs(front[1])),
    back: length(back[0]),
    inBack: length(Math.abs(back[1])),
  });
}

function stepsOf({ spec, panel, blank, base, weight, standing, layers }: BuiltFin, units: Units): string[] {
  const { steps } = words.page;
  const { tab, pass, section, wood } = spec.build!;
  const isFlat = section !== 'symmetric';
  const glueFlat = standing.length > 1 ? steps.glueFlatPair : steps.glueFlat;
  const glue = isFlat ? glueFlat : panel ? steps.glue : steps.glueWood;
  const foil = isFlat ? steps.foilFlat : panel && layers.length > 1 ? steps.foil : steps.foilWood;
  return [
    ...(panel ? [steps.panel, say(steps.measurePanel, { thick: printFine(panel.thickness, units) })] : []),
    ...(wood.length > 0 ? [glue, say(steps.measureBlank, { thick: printFine(blank.thickness, units) })] : []),
    say(steps.mark, {
      below: printLength(blank.below, units),
      tip: printLength(blank.below + spec.depth, units),
    }),
    say(isFlat ? steps.sledFlat : steps.sled, { pass: printFine(pass, units) }),
    steps.outline,
    ...(tab ? [steps.tabAway] : []),
    foil,
    steps.trailing,
    say(steps.weigh, { weight: printWeight(weight, units) }),
    ...(tab?.isTemporary ? [steps.cut] : []),
    steps.set,
    base ? say(steps.fillet, { radius: printLength(base.radius, units) }) : steps.noFillet,
  ];
}
