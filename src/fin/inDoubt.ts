import words from '../../templates/fin.json' with { type: 'json' };
import type { Doubt } from '../job/finding.js';
import type { FinSpec } from '../job/spec/finish.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import { crossing, type BuiltFin } from './finOf.js';
import { sidesOf } from './layers.js';

const { doubt } = words;

/** What stands against building a fin: edges that meet, a blank that is too thin, no keep-out under its base. */
export function finsInDoubt(fins: readonly FinSpec[], built: readonly BuiltFin[], units: Units): Doubt[] {
  const crossed = fins.flatMap((spec, index) => {
    const y = spec.build && crossing(spec);
    if (y === undefined) return [];
    return [told(index, say(doubt.crossing, { name: spec.name, y: printLength(y, units) }), doubt.uncross)];
  });
  return [...crossed, ...built.flatMap((fin) => [...thin(fin, units), ...loose(fin)])];
}

function thin({ index, spec, blank, tapered }: BuiltFin, units: Units): Doubt[] {
  const lack = tapered.base - blank.thickness;
  if (lack <= 0) return [];
  const what = say(doubt.thin, {
    name: spec.name,
    has: printAs('there', blank.thickness, units),
    needs: printAs('needed', tapered.base, units),
  });
  const sides = sidesOf(spec);
  const by = printAs('needed', lack / sides, units);
  return [told(index, what, say(sides === 2 ? doubt.thicken : doubt.thinOne, { by }))];
}

function loose({ index, spec, standing }: BuiltFin): Doubt[] {
  if (standing.every(({ keepOut }) => keepOut !== undefined)) return [];
  return [told(index, say(doubt.loose, { name: spec.name }), doubt.hold)];
}

const told = (index: number, what: string, remedy: string): Doubt => ({
  where: { path: `fins[${index}].build` },
  what,
  remedy,
});
