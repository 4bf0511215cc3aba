import words from '../../templates/stock.json' with { type: 'json' };
import type { Doubt } from '../job/finding.js';
import type { RawStockSpec } from '../job/spec/stock.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import type { Lack } from './lumber/lumberList.js';
import { sayStrip } from './sayStrip.js';
import { saySlid, slidInJob } from './saySlid.js';
import type { ShortPlace } from './short.js';
import type { InBlank } from './inBlank.js';
import type { Stock } from './stockOf.js';
import type { Unfit } from './unfit.js';

/** Where stock is short: each with the place, by how much, and what would cure it. The plan of the chambers goes on. */
export function stockInDoubt({ blank, lumber, billets, unused }: Stock, spec: RawStockSpec, units: Units): Doubt[] {
  return [
    ...(blank?.unfit ?? []).map((unfit) => unfitDoubt(unfit, units)),
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
    ...unused.lumber.map((material) => unusedDoubt('stock.lumber', material, words.unused.stringer)),
    ...unused.billets.map((material) => unusedDoubt('stock.billets', material, words.unused.strip)),
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
            by: saySlid(slide.slid, units),
            job: slidInJob(place.strip, slide.slid, units),
          }),
        ]
      : []),
    say(words.cure[side === 'left rail' || side === 'right rail' ? 'rail' : side], {
      by: printAs('stays', asked - over, units),
      at: length(at[0]),
    }),
  ];
  return {
    where: { path: 'stock.blank' },
    what: say(over < 0 ? words.short.none : words.short.some, {
      side: isAlike && side === 'right rail' ? words.rails : side,
      strip,
      over: printAs('over', Math.max(0, over), units),
      lack: printAs('stays', asked - over, units),
      asked: printAs('stays', asked, units),
      at: length(at[0]),
      out: length(Math.abs(at[1])),
      hand: isAlike ? words.either : at[1] < 0 ? words.left : words.right,
      from: length(from),
      to: length(to),
    }),
    remedy: cures.join(words.or),
  };
}

function unfitDoubt(unfit: Unfit, units: Units): Doubt {
  const needed = (mm: number) => printAs('needed', mm, units);
  const { why } = unfit;
  const values: Record<string, string> =
    why === 'shorter'
      ? { needs: needed(unfit.needs), has: printAs('there', unfit.has, units), by: needed(unfit.needs - unfit.has) }
      : why === 'unknown'
        ? { strip: unfit.strip, there: unfit.there.join(', ') }
        : why === 'all'
          ? {}
          : why === 'beyond'
            ? { strip: unfit.strip, by: needed(unfit.by) }
            : { strip: unfit.strip, other: unfit.other, by: needed(unfit.by), at: printLength(unfit.x, units) };
  const path = why === 'shorter' || why === 'beyond' ? 'stock.blank' : 'stock.blank.strips';
  return { where: { path }, what: say(words.unfit[why].what, values), remedy: say(words.unfit[why].remedy, values) };
}

function unusedDoubt(path: string, material: string, kind: string): Doubt {
  return {
    where: { path },
    what: say(words.unused.what, { material, kind }),
    remedy: say(words.unused.remedy, { material, kind }),
  };
}

function lackDoubt(path: string, { part, why, material, needs, has, size }: Lack, units: Units): Doubt {
  const counts = why === 'count' || why === 'material';
  const values = {
    part,
    material,
    needs: counts ? needs : printAs('needed', needs, units),
    has: counts ? has : printAs('there', has, units),
    by: counts ? needs - has : printAs('needed', needs - has, units),
    long: printAs('needed', size.length, units),
    wide: printAs('needed', size.width, units),
    thick: printAs('needed', size.thickness, units),
  };
  return { where: { path }, what: say(words.lack[why], values), remedy: say(words.supply[why], values) };
}
