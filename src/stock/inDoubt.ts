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
    ...(blank?.unfit ?? []).map((unfit) => unfitDoubt(unfit, blank!, spec, units)),
    ...(blank
      ? blank.short.slice(0, MOST_TOLD).map((place) => shortDoubt(place, blank, spec.allowance, spec, units))
      : []),
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

function shortDoubt(place: ShortPlace, blank: InBlank, asked: number, spec: RawStockSpec, units: Units): Doubt {
  const { slides, isAlike } = blank;
  const { side, over, at, from, to, isOutOfReach } = place;
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
    ...sayCure(blank, spec, units),
    words.cure[side === 'left rail' || side === 'right rail' ? 'rail' : side],
  ];
  return {
    where: { path: 'stock.blank' },
    what:
      say(over < 0 ? words.short.none : words.short.some, {
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
      }) + (isOutOfReach ? words.outOfReach : ''),
    remedy: cures.join(words.or),
  };
}

/** What takes every short place away, if anything does. */
function sayCure({ cure }: InBlank, spec: RawStockSpec, units: Units): string[] {
  if (!cure) return [];
  if (cure.kind === 'place') {
    const keys = Object.entries(cure.place).map(([key, mm]) => `${key}: ${printLength(mm, units)}`);
    return [say(words.cure.place, { place: `{${keys.join(', ')}}` })];
  }
  const by = (['thicker', 'wider', 'longer'] as const).flatMap((how) =>
    cure.larger[how] > 0 ? [say(words.cure[how], { by: printAs('needed', cure.larger[how], units) })] : [],
  );
  return [say(words.cure.blank, { by: by.join(words.and) }) + (spec.blank?.place ? words.cure.free : '')];
}

function unfitDoubt(unfit: Unfit, blank: InBlank, spec: RawStockSpec, units: Units): Doubt {
  const needed = (mm: number) => printAs('needed', mm, units);
  const values = unfitValues(unfit, needed, units);
  const { what, remedy } = words.unfit[unfit.why];
  const isOfStrips = unfit.why === 'overlap' || unfit.why === 'unknown' || unfit.why === 'all';
  return {
    where: { path: isOfStrips ? 'stock.blank.strips' : 'stock.blank' },
    what: say(what, values),
    remedy: [
      ...(unfit.why === 'shorter' || unfit.why === 'narrower' ? sayCure(blank, spec, units) : []),
      say(remedy, values),
    ].join(words.or),
  };
}

function unfitValues(unfit: Unfit, needed: (mm: number) => string, units: Units): Record<string, string> {
  switch (unfit.why) {
    case 'shorter':
    case 'narrower': {
      const { needs, has } = unfit;
      return { needs: needed(needs), has: printAs('there', has, units), by: needed(needs - has) };
    }
    case 'beyond':
      return { strip: unfit.strip, by: needed(unfit.by) };
    case 'overlap': {
      const { strip, other, by, outward, x } = unfit;
      const further = { outer: outward.strip, outward: needed(outward.by) };
      return { strip, other, by: needed(by), at: printLength(x, units), ...further };
    }
    case 'unknown':
      return { strip: unfit.strip, there: unfit.there.join(', ') };
    case 'all':
      return {};
  }
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
