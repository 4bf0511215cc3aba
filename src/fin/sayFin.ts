import words from '../../templates/fin.json' with { type: 'json' };
import { printSmallArea } from '../length/area.js';
import { printFine } from '../length/fine.js';
import { printLength } from '../length/length.js';
import { printWeight } from '../length/weight.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import type { BuiltFin } from './finOf.js';

/** A fin in lines to read at a terminal: what comes out, and what its sled is set to. */
export function sayFin(fin: BuiltFin, units: Units): string[] {
  const { spec, area, centre, weight, blank, sled, standing } = fin;
  const { report } = words;
  return [
    say(report.fin, {
      name: spec.name,
      count: standing.length,
      area: printSmallArea(area, units),
      weight: printWeight(weight, units),
      x: printLength(centre.x, units),
      y: printLength(centre.y, units),
    }),
    say(report.blank, { thick: printFine(blank.thickness, units), low: printFine(sled.low, units) }),
    ...sled.sides.map(({ high, opening, passes }, i) =>
      say(report.side, {
        side: i + 1,
        high: printFine(high, units),
        opening: printFine(opening, units),
        passes,
      }),
    ),
  ];
}
