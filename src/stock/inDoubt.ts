import words from '../../templates/stock.json' with { type: 'json' };
import type { Doubt } from '../job/finding.js';
import type { RawStockSpec } from '../job/spec/stock.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import type { Lack } from './lumber/lumberList.js';
import { sayStrip } from './sayStrip.js';
import type { ShortPlace } from './short.js';
import type { InBlank, Stock } from './stockOf.js';

/** Where stock is short: each with the place, by how much, and what would cure it. The plan of the chambers goes on. */
export function stockInDoubt({ blank, lumber, billets }: Stock, spec: RawStockSpec, units: Units): Doubt[] {
  return [
    ...(blank ? blank.short.slice(0, MOST_TOLD).map((place) => shortDoubt(place, blank, spec.allowance, units)) : []),
    ...(blank && blank.short.length > MOST_TOLD
      ? [
          {
            where: { path: 'stock.blank' },
            what: say(words.more, { count: blank.short.length - MOST_TOLD }),
            remedy: words.seeTable,
          },
        ]
      : []),
    ...(lumber?.lacks ?? []).map((lack) => lackDoubt('stock.lumber', lack, units)),
    ...(billets?.lacks ?? []).map((lack) => lackDoubt('stock.billets', lack, units)),
  ];
}

/** As many short places are told; the marking-up table has all. */
const MOST_TOLD = 6;

function shortDoubt(place: ShortPlace, { slides, isAlike }: InBlank, asked: number, units: Units): Doubt {
  const { side, over, at, from, to } = place;
  const strip = sayStrip(place.strip, isAlike);
  const length = (mm: number) => printLength(mm, units);
  const slide = slides.find((each) => each.strip === place.strip);
  const cures = [
    ...(slide
      ? [
          say(words.cure.slide, {
            strip,
            along: length(Math.abs(slide.by.along)),
            way: slide.by.along < 0 ? words.toNose : words.toTail,
            up: length(Math.abs(slide.by.up)),
            turn: slide.by.up < 0 ? words.down : words.up,
            nose: length(Math.abs(slide.by.noseUp)),
            tilt: slide.by.noseUp < 0 ? words.down : words.up,
          }),
        ]
      : []),
    say(words.cure[side === 'left rail' || side === 'right rail' ? 'rail' : side], {
      by: printAs('needed', asked - over, units),
      at: length(at[0]),
    }),
  ];
  return {
    where: { path: 'stock.blank' },
    what: say(over < 0 ? words.short.none : words.short.some, {
      side: isAlike && side === 'right rail' ? words.rails : side,
      strip,
      over: printAs('there', Math.max(0, over), units),
      lack: printAs('needed', asked - over, units),
      asked: printAs('needed', asked, units),
      at: length(at[0]),
      out: length(Math.abs(at[1])),
      hand: isAlike ? words.either : at[1] < 0 ? words.left : words.right,
      from: length(from),
      to: length(to),
    }),
    remedy: cures.join(words.or),
  };
}

function lackDoubt(path: string, { part, why, material, needs, has }: Lack, units: Units): Doubt {
  const counts = why === 'count' || why === 'material';
  const values = {
    part,
    material,
    needs: counts ? needs : printAs('needed', needs, units),
    has: counts ? has : printAs('there', has, units),
    by: counts ? needs - has : printAs('needed', needs - has, units),
  };
  return { where: { path }, what: say(words.lack[why], values), remedy: say(words.supply[why], values) };
}
