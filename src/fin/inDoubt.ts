import words from '../../templates/fin.json' with { type: 'json' };
import type { Doubt } from '../job/finding.js';
import type { FinSpec } from '../job/spec/finish.js';
import { printFine } from '../length/fine.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import { crossing, type BuiltFin } from './finOf.js';
import { layersThickness, sidesOf } from './layers.js';

const { doubt } = words;

/**
 * What stands against building a fin: edges that meet, a blank that is too thin or was hardly measured right, no
 * keep-out under its base.
 */
export function finsInDoubt(fins: readonly FinSpec[], built: readonly BuiltFin[], units: Units): Doubt[] {
  const crossed = fins.flatMap((spec, index) => {
    const y = spec.build && crossing(spec);
    if (y === undefined) return [];
    return [told(index, say(doubt.crossing, { name: spec.name, y: printLength(y, units) }), doubt.uncross)];
  });
  return [...crossed, ...built.flatMap((fin) => [...mismeasured(fin, units), ...thin(fin, units), ...loose(fin)])];
}

/** A blank that was measured comes out as thick as its layers within these shares; common practice, no source. */
const MEASURED = { least: 0.8, most: 1.3 } as const;

function mismeasured({ index, spec, blank }: BuiltFin, units: Units): Doubt[] {
  const layers = layersThickness(spec);
  const share = blank.thickness / layers;
  if (spec.build!.blankThickness === undefined || (share >= MEASURED.least && share <= MEASURED.most)) return [];
  const values = {
    name: spec.name,
    measured: printFine(blank.thickness, units),
    layers: printFine(layers, units),
  };
  return [
    {
      ...told(index, say(doubt.measured, values), doubt.measureAgain),
      where: { path: `fins[${index}].build.blankThick` },
    },
  ];
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
