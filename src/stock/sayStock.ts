import words from '../../templates/stock.json' with { type: 'json' };
import type { RawStockSpec } from '../job/spec/stock.js';
import { counted } from '../length/counted.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import type { LumberList } from './lumber/lumberList.js';
import type { InBlank } from './inBlank.js';
import { saySlid } from './saySlid.js';
import type { Stock } from './stockOf.js';

const { report } = words;

/** How the board lies in its stock and what to buy, in lines. */
export function sayStock({ blank, lumber, billets }: Stock, spec: RawStockSpec, units: Units): string[] {
  return [
    ...(blank ? sayBlank(blank, spec.allowance, units) : []),
    ...(lumber ? [sayList('lumber', lumber)] : []),
    ...(billets ? [sayList('billets', billets)] : []),
  ];
}

function sayBlank(
  { moulded, fits, least, short, width, sawdust, isAlike }: InBlank,
  allowance: number,
  units: Units,
): string[] {
  const length = (mm: number) => printLength(mm, units);
  const asked = printAs('stays', allowance, units);
  return [
    ...fits.flatMap(({ placement: { along, up, noseUp }, of, slid, bound }) => [
      ...(slid && slid.against.length > 0
        ? [
            say(report.slid, {
              strips: of.join(' '),
              against: slid.against.join(' '),
              by: saySlid(slid.by, units),
            }),
          ]
        : []),
      (fits.length > 1 ? `  ${of.join(' ')}:` : '') +
        say(report.placed, {
          along: length(along),
          up: length(up),
          nose: length(Math.abs(noseUp)),
          tilt: noseUp < 0 ? words.down : words.up,
        }),
      ...(bound
        ? [say(report.bound, { within: length(bound.within), most: printAs('stays', bound.most, units) })]
        : []),
    ]),
    ...least.map(({ side, over, at }) =>
      say(report.least, {
        side: isAlike && side === 'right rail' ? words.rails : side,
        over: over < 0 ? say(words.beyond, { by: printAs('stays', -over, units) }) : printAs('over', over, units),
        at: length(at[0]),
      }),
    ),
    short.length > 0
      ? say(report.short, { asked, count: counted(short.length, 'place') })
      : say(report.fits, { asked }),
    say(report.litres, {
      moulded: moulded.volume.toFixed(1),
      strips: (moulded.volume - sawdust).toFixed(1),
      sawdust: sawdust.toFixed(1),
    }),
    say(report.width, { glued: length(width.glued), moulded: length(width.moulded) }),
  ];
}

function sayList(what: string, { planks, cost, boardFeet, waste }: LumberList): string {
  return say(report.lumber, {
    what,
    planks: counted(planks.length, 'piece'),
    feet: what === 'lumber' && boardFeet !== undefined ? say(report.feet, { feet: boardFeet.toFixed(2) }) : '',
    cost: cost === undefined ? '' : say(report.cost, { cost: cost.toFixed(2) }),
    waste: (100 * waste).toFixed(0),
  });
}
