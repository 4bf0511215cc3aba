import words from '../../templates/stock.json' with { type: 'json' };
import type { RawStockSpec } from '../job/spec/stock.js';
import { counted } from '../length/counted.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import { printThin } from '../length/thin.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import { boardInFoam, type BoardInFoam, type FoamAt } from './boardInFoam.js';
import type { LumberList } from '../stock/lumber/lumberList.js';
import type { InBlank } from '../stock/inBlank.js';
import { SIDES, type StockSide } from '../stock/skin.js';
import type { StripFit } from '../stock/stripFits.js';
import { saySlid } from '../stock/saySlid.js';
import type { Stock } from '../stock/stockOf.js';

const { report } = words;

/** How the board lies in its stock and what to buy, in lines. */
export function sayStock({ blank, lumber, billets }: Stock, spec: RawStockSpec, units: Units): string[] {
  return [
    ...(blank ? sayBlank(blank, spec.allowance, units) : []),
    ...(lumber ? [sayList('lumber', lumber)] : []),
    ...(billets ? [sayList('billets', billets)] : []),
  ];
}

function sayBlank(blank: InBlank, allowance: number, units: Units): string[] {
  const { moulded, fits, least, short, width, sawdust, isAlike } = blank;
  const lying = boardInFoam(blank);
  const wider = width.glued - width.board;
  const length = (mm: number) => printLength(mm, units);
  const asked = printAs('stays', allowance, units);
  return [
    ...fits.flatMap((fit, i) => sayFit(fit, lying[i]!, isAlike, units)),
    ...least.map(({ side, over, at }) =>
      say(report.least, {
        side: saySide(side, isAlike),
        over: sayOver(over, units),
        at: length(at[0]),
      }),
    ),
    short.length > 0
      ? say(report.short, { asked, count: counted(short.length, 'place') })
      : say(report.fits, { asked }),
    ...(sawdust === undefined
      ? []
      : [
          say(report.litres, {
            moulded: moulded.volume.toFixed(1),
            strips: (moulded.volume - sawdust).toFixed(1),
            sawdust: sawdust.toFixed(1),
          }),
        ]),
    say(report.width, {
      glued: length(width.glued),
      by: length(Math.abs(wider)),
      way: wider < 0 ? report.narrower : report.wider,
      moulded: length(width.moulded),
    }),
  ];
}

function sayFit({ bound, outOfReach, skin }: StripFit, lies: BoardInFoam, isAlike: boolean, units: Units): string[] {
  const sides = SIDES.filter((_, code) => outOfReach.some((i) => skin.side[i] === code));
  return [
    ...sayLying(lies, units),
    ...(bound
      ? [
          say(report.bound, {
            within: printLength(bound.within, units),
            most: bound.most < 0 ? sayOver(bound.most, units) : printAs('stays', bound.most, units),
          }),
        ]
      : []),
    ...(sides.length > 0
      ? [say(report.outOfReach, { sides: sides.map((side) => saySide(side, isAlike)).join(', ') })]
      : []),
  ];
}

/** How strips are moved, where the board begins in their foam, and how high it lies in it, in lines. */
export function sayLying({ of, slid, strip, along, stations }: BoardInFoam, units: Units): string[] {
  const strips = of.join(' ');
  return [
    ...(slid && slid.against.length > 0
      ? [say(report.slid, { strips, against: slid.against.join(' '), by: saySlid(slid.by, units) })]
      : []),
    say(along < 0 ? report.before : report.behind, { along: printLength(Math.abs(along), units), strips }),
    say(report.heights, { strip, list: stations.map((at) => sayFoamAt(at, units)).join('; ') }),
  ];
}

const saySide = (side: StockSide, isAlike: boolean) => (isAlike && side === 'right rail' ? words.rails : side);

/** What stands over the board; in words where there is none. */
function sayOver(over: number, units: Units): string {
  return over < 0 ? say(words.beyond, { by: printAs('stays', -over, units) }) : printAs('over', over, units);
}

function sayFoamAt({ x, under, over }: FoamAt, units: Units): string {
  const foam = (mm: number) => (mm < 0 ? say(report.lacking, { by: printThin(-mm, units) }) : printThin(mm, units));
  return say(report.heightsAt, { x: printLength(x, units), under: foam(under), over: foam(over) });
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
